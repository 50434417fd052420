// The dialog with the link to exactly what stands here.
import {h, setText} from "./dom.js";

export function create(host, {document, words, clipboard}) {
  const make = (...parts) => h(document, ...parts);
  const link = make("input", {class: "link", id: "link", readonly: true, "aria-label": words("share-link"), onfocus: () => link.select()});
  const said = make("p", {role: "status"});
  const veiled = make("p", {class: "fine", hidden: true}, words("share-hidden"));
  const each = make("input", {type: "checkbox", id: "share-each", onchange: () => { link.value = each.checked ? addresses[1] : addresses[0]; }});
  const dealing = make("label", {class: "share-each", hidden: true}, each, make("span", {}, words("share-each")));
  let addresses = ["", ""];
  const copy = make("button", {type: "button", id: "copy-link", onclick: copyLink}, words("share-copy"));
  host.append(
    make("div", {class: "head"}, make("h2", {id: "share-title"}, words("share-title")), make("button", {type: "button", onclick: () => host.close()}, words("close"))),
    make("p", {}, words("share-about")), dealing, link, make("p", {}, copy), veiled, said,
  );

  async function copyLink() {
    try {
      await clipboard.writeText(link.value);
      setText(said, words("share-copied"));
    } catch {
      link.select();
      setText(said, words("share-by-hand"));
    }
  }

  return {
    /**
     * @param {string|null} address null where `large`, a "plant" or a "puzzle", does not fit into one
     * @param {{large?: string, hidden?: boolean, own?: string|null}} [about] `hidden`: it carries a hidden cause;
     *   `own`: the address with which everybody has numbers of their own
     */
    show(address, {large = "plant", hidden = false, own = null} = {}) {
      veiled.hidden = !hidden;
      setText(said, "");
      addresses = [address ?? "", own];
      each.checked = false;
      dealing.hidden = own === null;
      link.hidden = copy.hidden = address === null;
      link.value = address ?? "";
      if (address === null) setText(said, words(`share-too-long-${large}`));
      host.showModal();
    },
  };
}
