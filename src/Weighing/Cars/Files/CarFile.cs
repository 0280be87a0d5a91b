using System.Text;
using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>A car as a JSON document: units in the names, an uncertainty with every number. Schema: docs/cars/car.schema.json.</summary>
/// <param name="Car">Null when the document cannot be used.</param>
/// <param name="Mistakes">All of them, each with place and line.</param>
sealed record CarFile(CarModel? Car, IReadOnlyList<Diagnostic> Mistakes)
{
    /// <summary>Fields that stand in it under an earlier name (SL-519), each with place and line.</summary>
    public IReadOnlyList<Diagnostic> EarlierNames { get; init; } = [];

    /// <summary>What is said of a document beyond <see cref="CarFileSize.Most"/>.</summary>
    public static Diagnostic TooLarge { get; } = new(CarCodes.FileTooLarge, $"The car file is larger than {CarFileSize.Most / 1024} kB.", "See that it is the car file: a whole car takes a few kilobytes.");

    /// <summary>Reads a document. Never throws for what is in it.</summary>
    public static CarFile Read(string text)
    {
        if (Encoding.UTF8.GetByteCount(text) > CarFileSize.Most)
            return new(null, [TooLarge]);
        var notes = new DocumentNotes(text);
        var car = JsonBlock.Open(text, notes) is { } root ? Read(root, notes) : null;
        return new(notes.Found.Count == 0 ? car : null, notes.Found) { EarlierNames = notes.Earlier };
    }

    /// <summary>Reads a car that stands within another document; null with its mistakes noted when it cannot be used.</summary>
    internal static CarModel? Read(JsonBlock root, DocumentNotes notes)
    {
        var before = notes.Found.Count;
        var reader = new CarReader(root);
        var car = reader.Read();
        root.Finish();
        if (car is null || notes.Found.Count > before)
            return null;
        var mistakes = CarModelCheck.Mistakes(car);
        foreach (var mistake in mistakes)
            notes.Add(mistake with { Where = reader.PlaceOf(mistake.Where) });
        return mistakes.Count == 0 ? car : null;
    }
}
