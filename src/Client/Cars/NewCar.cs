using System.Text;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;
using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Client.Cars;

/// <summary>A car by questions, written as a file. What was answered is kept beside it until then.</summary>
/// <param name="shell">Where to write.</param>
/// <param name="answer">The next answer; null when there will be none.</param>
internal sealed class NewCar(Shell shell, Func<string?> answer)
{
    /// <summary>Asks, and writes the file. An existing file is not touched.</summary>
    /// <returns>An exit code.</returns>
    public int Ask(string path)
    {
        if (File.Exists(path))
        {
            shell.Error.WriteLine(new Diagnostic(ClientCodes.FileExists, $"{path} is there already.", "Name another file, or edit that one."));
            return ExitCodes.ToBeRemedied;
        }

        var draft = new CarDraft(path);
        if (new CarInterview(shell, draft, answer).Run() is not { } car)
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
    }
}
