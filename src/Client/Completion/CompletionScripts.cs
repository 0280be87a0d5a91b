namespace ScaleLink.Client.Completion;

/// <summary>
/// Scripts that let a shell ask the program what could stand at the cursor, by the directive of System.CommandLine:
/// <c>scalelink "[suggest:POSITION]" LINE</c> prints one suggestion a line. Each asks for all that could stand where the word begins and compares by
/// itself: of a word that is a command already, the program would only tell what comes after it, and "work" would hide "work-session".
/// </summary>
internal static class CompletionScripts
{
    /// <summary>The shells, as they are named on the command line.</summary>
    public static IReadOnlyList<string> Shells { get; } = ["bash", "zsh", "fish", "powershell"];

    /// <summary>The script of one of them.</summary>
    public static string Of(string shell) => shell switch
    {
        "bash" => Bash,
        "zsh" => Zsh,
        "fish" => Fish,
        "powershell" => PowerShell,
        _ => throw new ArgumentOutOfRangeException(nameof(shell), shell, null),
    };

    private const string Bash = """
        # To use it now: source <(scalelink completion bash). To keep it: the same line in ~/.bashrc.
        _scalelink_complete() {
            local word="${COMP_WORDS[COMP_CWORD]}" line="${COMP_LINE:0:COMP_POINT}" suggestion
            line="${line%"$word"}"
            COMPREPLY=()
            while IFS= read -r suggestion; do
                [[ -n $suggestion && $suggestion == "$word"* ]] && COMPREPLY+=("$suggestion")
            done < <("${COMP_WORDS[0]}" "[suggest:${#line}]" "$line" 2>/dev/null)
        }
        complete -o default -F _scalelink_complete scalelink
        """;

    private const string Zsh = """
        #compdef scalelink
        # To use it now: source <(scalelink completion zsh), after compinit. To keep it: the same line in ~/.zshrc.
        _scalelink() {
            local line="${(j: :)words[1,CURRENT-1]} "
            local -a suggestions
            suggestions=("${(@f)$("${words[1]}" "[suggest:${#line}]" "$line" 2>/dev/null)}")
            if (( ${#suggestions} )) && [[ -n ${suggestions[1]} ]]; then
                compadd -- "${suggestions[@]}"
            else
                _files
            fi
        }
        compdef _scalelink scalelink
        """;

    private const string Fish = """
        # To use it now: scalelink completion fish | source. To keep it: scalelink completion fish > ~/.config/fish/completions/scalelink.fish
        function __scalelink_complete
            set -l line (string join " " -- (commandline -opc))" "
            scalelink "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null
        end
        complete -c scalelink -a '(__scalelink_complete)'
        """;

    private const string PowerShell = """
        # To use it now: scalelink completion powershell | Out-String | Invoke-Expression. To keep it: the same line in $PROFILE.
        Register-ArgumentCompleter -Native -CommandName scalelink -ScriptBlock {
            param($wordToComplete, $commandAst, $cursorPosition)
            $line = "$commandAst"
            if ($wordToComplete) { $line = $line.Substring(0, $line.Length - $wordToComplete.Length) } else { $line += ' ' }
            scalelink "[suggest:$($line.Length)]" $line | Where-Object { $_ -like "$wordToComplete*" } | ForEach-Object {
                [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
            }
        }
        """;
}
