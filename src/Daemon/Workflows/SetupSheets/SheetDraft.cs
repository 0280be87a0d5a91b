using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>What somebody wants to save: the version before with some values changed.</summary>
/// <param name="Changes">By slot; null takes the value out.</param>
/// <param name="Note">What the crew said.</param>
/// <param name="CopiedFrom">In words; empty: it is no copy.</param>
/// <param name="OnCar">The car is set up so.</param>
internal sealed record SheetDraft(IReadOnlyList<(SheetSlot Slot, SheetValue? Value)> Changes, string Note, string CopiedFrom, bool OnCar)
{
    /// <summary>Replaces whatever was there, where it is set; as when a sheet is copied onto another.</summary>
    public SheetContent? Whole { get; init; }

    /// <summary>On top of what a version says.</summary>
    public SheetContent On(SheetContent before) => Changes.Aggregate(Whole ?? before, (content, change) => content.With(change.Slot, change.Value));

    /// <summary>Of what was typed.</summary>
    /// <param name="typed">Slots and values as typed; an empty value takes one out.</param>
    /// <param name="carFile">A car file whose setup goes first; empty: none.</param>
    /// <param name="car">Its name has to be this.</param>
    /// <param name="units">Of numbers without one.</param>
    /// <param name="note">What the crew said.</param>
    /// <param name="onCar">The car is set up so.</param>
    /// <exception cref="DiagnosticException">SL-612, SL-613 and those of the car file; all are listed.</exception>
    public static SheetDraft Of(IEnumerable<(string Slot, string Value)> typed, string carFile, string car, Units units, string note, bool onCar)
    {
        List<Diagnostic> mistakes = [];
        List<(SheetSlot, SheetValue?)> changes = carFile.Length > 0 ? [.. FromFile(carFile, car, mistakes)] : [];
        var read = SheetChanges.Read(typed, units);
        changes.AddRange(read.Values);
        mistakes.AddRange(read.Mistakes);
        return mistakes.Count == 0 ? new(changes, note, "", onCar) : throw new DiagnosticException(mistakes);
    }

    private static IEnumerable<(SheetSlot, SheetValue?)> FromFile(string text, string car, List<Diagnostic> mistakes)
    {
        var read = CarFile.Read(text);
        mistakes.AddRange(read.Mistakes);
        if (read.Car is not { } model)
            return [];
        if (model.Name != car)
            mistakes.Add(new(CarCodes.CarNotFound, $"The car file is of {model.Name}, the setup sheet of {PlainText.Clean(car, 80)}.", "Take the file of that car."));
        return CarSheet.Of(model).Values.Select(v => (v.Key, (SheetValue?)v.Value));
    }
}
