/**
 * What the three shells load. Each asks `dryline completion for -- WORDS` for the candidates of the last word, a line
 * each: the word, two spaces, what it says.
 */

/** Words are quoted as the shell needs them, unless a quote was begun already. */
export const bashCompletion = String.raw`# dryline completion for bash
_dryline() {
  local line word current="${"$"}{COMP_WORDS[COMP_CWORD]}"
  COMPREPLY=()
  while IFS= read -r line; do
    word="${"$"}{line%%  *}"
    case "${"$"}current" in
      [\"\']*) ;;
      *) printf -v word %q "${"$"}word" ;;
    esac
    COMPREPLY+=("${"$"}word")
  done < <(dryline completion for -- "${"$"}{COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
}
complete -F _dryline dryline
`;

export const zshCompletion = String.raw`#compdef dryline
# dryline completion for zsh
_dryline() {
  local line
  local -a found
  while IFS= read -r line; do
    found+=("${"$"}{${"$"}{line%%  *}//:/\\:}:${"$"}{line#*  }")
  done < <(dryline completion for -- "${"$"}{(@Q)words[2,CURRENT]}" 2>/dev/null)
  _describe 'dryline' found
}
compdef _dryline dryline
`;

export const fishCompletion = String.raw`# dryline completion for fish
function __dryline_complete
    set -l words (commandline -opc) (commandline -ct)
    dryline completion for -- ${"$"}words[2..-1] 2>/dev/null | string replace '  ' \t
end
complete -c dryline -f -a '(__dryline_complete)'
`;
