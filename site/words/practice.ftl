# Words of puzzles made for practice. Their stories are put together from scenarios/compose.

practice-title = Practice
practice-about = Puzzles without end, made here one at a time and held to be fair before you get them. The same number and level give everybody the same puzzle.
practice-level = Level
practice-level-any = Any
practice-number = No., if you were given one
practice-number-wrong = A number from { $low } to { $high }, or none for a new puzzle.
practice-make = Make a puzzle
practice-name = Practice no. { $seed } · { $level }
practice-name-any = Practice no. { $seed } · Any level
practice-making = { $name }
practice-waits = The simulator is still loading. Then it begins.
practice-draw = Draw { $draw }:
practice-doing-suspects = everything that could have happened at this plant is reckoned.
practice-doing-words = something happens, and somebody tells of it.
practice-doing-chance = can the truth be found? It is tried on many mornings.
practice-doing-plays = it is played, to see whether there is enough to find.
practice-suspects = { $done } of { $of } suspects.
practice-chance = { $done } of { $of } mornings.
practice-refused = { $count ->
    [one] One draw was refused as unfair or too easy
   *[other] { $count } draws were refused as unfair or too easy
}; at most { $most } are tried.
practice-bar = How far the present step is
practice-stop = Stop
practice-given-up = No. { $seed } makes no fair puzzle. Take another number, or none.
practice-failed = No. { $seed } could not be made just now.
practice-before = Made before: { $count }{ $begun ->
    [0] { "" }
   *[other] {", "}{ $begun } begun
}
practice-another = Make another one
practice-another-note = Another plant, another night, at the same level.
practice-in-case = practice no. { $seed }
practice-in-case-any = practice no. { $seed }, any level
