using System.CommandLine;
using System.Text;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Client.Cars;

/// <summary><c>scalelink car new</c>: asks for what is needed and writes a car file.</summary>
internal static class CarNewCommand
{
    public static Command Create(Shell shell)
    {
        var file = new Argument<string>("file") { Description = "Where to write it. An existing file is not touched.", HelpName = "FILE" };
        var command = new Command("new", "Asks for a car's measures and rates, and writes its file. An empty answer: nobody knows; a wide guess stands in. Left early, it goes on there the next time.") { file };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            if (File.Exists(path))
            {
                shell.Error.WriteLine(new Diagnostic(ClientCodes.FileExists, $"{path} is there already.", "Name another file, or edit that one."));
                return ExitCodes.ToBeRemedied;
            }

            var draft = new CarDraft(path);
            if (new CarInterview(shell, draft).Run() is not { } car)
            {
                shell.Error.WriteLine(shell.Glyphs.Tell(new Diagnostic(
                    ClientCodes.AnswersEnded,
                    File.Exists(draft.Path) ? $"The answers ended early; what was answered stands in {draft.Path}." : "The answers ended early; nothing was answered.",
                    $"Go on with: scalelink car new {path}")));
                return ExitCodes.NotAchieved;
            }

            var text = CarFileText.Of(car);
            var read = CarFile.Read(text);
            InputFile.Write(path, Encoding.UTF8.GetBytes(text + "\n"));
            if (read.Car is not null)
                draft.Remove();
            foreach (var line in read.Car is { } good ? CarPage.Good(path, good) : InputFile.Mistakes(path, read.Mistakes))
                shell.WriteLine(line);
            return read.Car is null ? ExitCodes.ToBeRemedied : ExitCodes.Done;
        });
        return command;
    }
}
