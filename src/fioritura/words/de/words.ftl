list-comma = { $first }, { $last }
list-and = { $first } und { $last }
list-or = { $first } oder { $last }
list-semicolon = { $first }; { $rest }
