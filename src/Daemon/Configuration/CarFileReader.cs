using ScaleLink.Measure;
using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Daemon.Configuration;

/// <summary>Reads the car file that a bay file names; its mistakes are the bay file's, with their own lines in the text.</summary>
internal static class CarFileReader
{
    public static string? Read(TomlBlock block, string bayFile)
    {
        if (block.Text("file") is not { } name)
            return null;
        try
        {
            var path = Path.GetFullPath(name, Path.GetDirectoryName(Path.GetFullPath(bayFile))!);
            if (BoundedText.Read(path, CarFileSize.Most) is not { } text)
            {
                block.Note(CarFile.TooLarge.Code, block.LineOf("file"), $"{name}: {CarFile.TooLarge.Message}", CarFile.TooLarge.Remedy);
                return null;
            }

            var mistakes = CarFile.Read(text).Mistakes;
            foreach (var mistake in mistakes)
                block.Note(mistake.Code, block.LineOf("file"), $"{name}{(mistake.Line is { } line ? $", line {line}" : "")}: {mistake.Message}", mistake.Remedy);
            return mistakes.Count == 0 ? text : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            block.Note(ConfigurationCodes.CarFileUnreadable, block.LineOf("file"), $"car.file = \"{name}\" cannot be read: {e.Message}", "Correct the path; it is meant from where the bay file lies.");
            return null;
        }
    }
}
