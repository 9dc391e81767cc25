#compdef doorpocket
# What can come next on a command line of doorpocket, for zsh.
_doorpocket() {
	local line word about
	local -a found
	while IFS= read -r line; do
		case $line in
		@folders) _files -/ ;;
		@files) _files ;;
		*)
			word=${line%%$'\t'*}
			about=${line#*$'\t'}
			found+=("${word//:/\\:}:$about")
			;;
		esac
	done < <(doorpocket complete -- "${(@)words[2,CURRENT]}" 2>/dev/null)
	(( $#found )) && _describe -V doorpocket found
}
# From a folder on the fpath this file is read when it is first needed, and is
# the function then.
if [[ $funcstack[1] == _doorpocket ]]; then
	_doorpocket "$@"
else
	compdef _doorpocket doorpocket
fi
