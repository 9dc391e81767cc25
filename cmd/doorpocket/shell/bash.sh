# What can come next on a command line of doorpocket, for bash.
_doorpocket() {
	local IFS=$'\n' line
	COMPREPLY=()
	compopt +o nospace
	while IFS= read -r line; do
		case $line in
		@folders) compopt -o filenames; COMPREPLY+=($(compgen -d -- "$2")) ;;
		@files) compopt -o filenames; COMPREPLY+=($(compgen -f -- "$2")) ;;
		*) COMPREPLY+=("${line%%$'\t'*}") ;;
		esac
	done < <(doorpocket complete -- "${COMP_WORDS[@]:1:COMP_CWORD-1}" "$2" 2>/dev/null)
}
complete -F _doorpocket doorpocket
