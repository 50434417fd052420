"""Words of direction beside two readings of one instrument are held against the numbers."""

from __future__ import annotations

import pytest
from tests.cases.samples import changed, prove_text

from loadfirst.cases.direction_words import contradictions
from loadfirst.errors import FileError

BOTH = "from {yesterday.flow-meter} to {today.flow-meter}"


@pytest.mark.parametrize(
    ("text", "moved", "word"),
    [
        (f"The flow rose {BOTH}.", 1.0, None),
        (f"The flow rose {BOTH}.", -1.0, "rose"),
        (f"The flow has fallen {BOTH}.", 1.0, "fallen"),
        (f"The gauge fell, and the flow went up {BOTH}.", 1.0, None),
        (f"The gauge fell, and the flow went up {BOTH}.", -1.0, "up"),
        (f"It would have fallen {BOTH}.", 1.0, None),
        (f"The gauge fell. It went {BOTH}.", 1.0, None),
        ("It dropped to {today.flow-meter}, from {yesterday.flow-meter}.", 1.0, "dropped"),
        ("It dropped: {today.flow-meter} and {yesterday.gauge-discharge}.", 1.0, None),
        (f"The flow rose {BOTH}.", None, None),
    ],
)  # fmt: skip
def test_a_word_that_its_numbers_deny_is_found(text: str, moved: float | None, word: str | None) -> None:
    """The last word of direction in the sentence counts; what is only supposed does not."""
    found = [one.word for one in contradictions(text, lambda id: moved)]
    assert found == ([] if word is None else [word])


def test_a_case_whose_prose_says_the_wrong_way_is_refused() -> None:
    """The flow rises; a reply says that it fell."""
    wrong = changed(("Yes: one step along the same curve.", f"The flow fell {BOTH}."))
    with pytest.raises(FileError) as error:
        prove_text(wrong)
    assert (error.value.where, error.value.rule) == ("choices[1].reply", "proof")
    assert "fell" in error.value.hint
