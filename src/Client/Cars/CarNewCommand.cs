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
        var command = new Command("new", "Asks for a car's measures and rates, and writes its file. An empty answer: nobody knows; a wide guess stands in.") { file };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            if (File.Exists(path))
            {
                shell.Error.WriteLine(new Diagnostic(ClientCodes.FileExists, $"{path} is there already.", "Name another file, or edit that one."));
                return ExitCodes.ToBeRemedied;
            }

            if (new CarInterview(shell).Run() is not { } car)
            {
                shell.Error.WriteLine(new Diagnostic(ClientCodes.AnswersEnded, "The answers ended early; nothing was written.", "Answer every question, or press Enter where nobody knows."));
                return ExitCodes.NotAchieved;
            }

            var text = CarFileText.Of(car);
            var read = CarFile.Read(text);
            InputFile.Write(path, Encoding.UTF8.GetBytes(text + "\n"));
            foreach (var line in read.Car is { } good ? CarPage.Good(path, good) : InputFile.Mistakes(path, read.Mistakes))
                shell.WriteLine(line);
            return read.Car is null ? ExitCodes.ToBeRemedied : ExitCodes.Done;
        });
        return command;
    }
}
