using System.CommandLine;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.Questions;

namespace ScaleLink.Client.Cars;

/// <summary><c>scalelink whatif</c>: questions of statics from one file, without a bay.</summary>
internal static class WhatIfCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var file = new Argument<string>("file") { Description = "Car, loads and questions as JSON; docs/whatif.md.", HelpName = "FILE" };
        var command = new Command("whatif", "What turns, pad heights, ballast and bars would do; a plan, balance aims, ballast, class minimum, centre of gravity. Needs no daemon.") { file };
        command.SetAction(parsed =>
        {
            var (path, json) = (parsed.GetValue(file)!, parsed.GetValue(common.Json));
            var read = WhatIfFile.Read(InputFile.Read(path), name => CarFileBeside(path, name));
            if (read.Questions is not { } questions)
                return InputFile.Refuse(path, read.Mistakes, json, shell);
            try
            {
                var answers = WhatIfAnswers.Of(questions);
                if (json)
                    shell.WriteLine(WhatIfJson.Of(answers).ToJsonString());
                else
                    foreach (var line in WhatIfPage.Lines(answers, shell.Glyphs))
                        shell.WriteLine(line);
                return ExitCodes.Done;
            }
            catch (DiagnosticException e)
            {
                return InputFile.Refuse(path, e.Diagnostics, json, shell);
            }
        });
        return command;
    }

    // A car file is meant from where the file of questions lies.
    private static string? CarFileBeside(string path, string name)
    {
        var beside = Path.GetFullPath(name, Path.GetDirectoryName(Path.GetFullPath(path))!);
        return File.Exists(beside) ? InputFile.ReadCar(beside) : null;
    }
}
