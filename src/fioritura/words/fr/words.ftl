list-comma = { $first }, { $last }
list-and = { $first } et { $last }
list-or = { $first } ou { $last }
list-semicolon = { $first } ; { $rest }
