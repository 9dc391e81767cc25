# What can come next on a command line of doorpocket, for fish.
function __doorpocket_next
    set -l words (commandline -opc) (commandline -ct)
    for line in (doorpocket complete -- $words[2..-1] 2>/dev/null)
        switch $line
            case @folders
                __fish_complete_directories (commandline -ct)
            case @files
                __fish_complete_path (commandline -ct)
            case '*'
                echo $line
        end
    end
end
complete -c doorpocket -f -a '(__doorpocket_next)'
