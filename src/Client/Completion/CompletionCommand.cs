using System.CommandLine;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Completion;

/// <summary><c>scalelink completion</c>: a script with which a shell completes commands, options and their values.</summary>
internal static class CompletionCommand
{
    public static Command Create(Shell shell)
    {
        var name = new Argument<string>("shell") { Description = "bash, zsh, fish or powershell." };
        name.AcceptOnlyFromAmong([.. CompletionScripts.Shells]);
        var command = new Command("completion", "Prints a script with which a shell completes commands, options and values. Its first line says how to use it.") { name };
        command.SetAction(parsed =>
        {
            shell.WriteLine(CompletionScripts.Of(parsed.GetValue(name)!).ReplaceLineEndings("\n"));
            return ExitCodes.Done;
        });
        return command;
    }
}
