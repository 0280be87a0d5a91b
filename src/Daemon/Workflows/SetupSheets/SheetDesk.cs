using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>The setup sheets. A version is an entry in the ledger before it is acknowledged; nothing is ever overwritten.</summary>
internal sealed class SheetDesk(LedgerDatabase ledger, CarShelf cars, TimeProvider time)
{
    private static readonly FoldedKind<SheetsState, StoredSheet> Savings = new(StoredSheet.Kind, (state, entry) => state.After(entry));
    private static readonly FoldedKind<SheetsState, StoredFitting> Fittings = new(StoredFitting.Kind, (state, entry) => state.After(entry));

    private readonly Workflow<SheetsState> _flow = new(ledger, SheetsState.None, null, Savings, Fittings);

    /// <summary>As they are now.</summary>
    public SheetsState State => _flow.State;

    /// <summary>One version; null for the newest.</summary>
    /// <exception cref="StepRefusedException">SL-610.</exception>
    public SheetVersion Find(SheetKey key, int? version) => Find(State, key, version);

    /// <summary>Saves a version on top of the one that the caller has seen.</summary>
    /// <param name="key">Of the sheet.</param>
    /// <param name="seen">The newest version that the caller knows of; 0: none.</param>
    /// <param name="draft">What to save.</param>
    /// <param name="who">For the ledger.</param>
    /// <exception cref="StepRefusedException">SL-516, SL-611, SL-615, SL-365.</exception>
    public SheetVersion Save(SheetKey key, long seen, SheetDraft draft, string who)
    {
        _ = Saved(key.Car);
        var state = _flow.Take(key.Car, all =>
        {
            var newest = all.Newest(key);
            if ((newest?.Version ?? 0) != seen)
                throw Overtaken(key, newest);
            var content = draft.On(newest?.Content ?? SheetContent.Empty);
            if (newest is null ? content.Count == 0 : content.Equals(newest.Content))
                throw new StepRefusedException(SheetCodes.NothingNew, newest is null ? (Sentence)"The setup sheet is empty." : $"Nothing differs from version {newest.Version} of {newest.Key.Words}.",
                    newest is null ? "Give it a value, or take it from a car file." : "Change something. To say that the car is set up so: scalelink sheet fit.");
            var version = 1 + (all.Of(key) is { Count: > 0 } versions ? versions.Max(v => v.Version) : 0);
            return Savings.Entry(time.GetUtcNow(), who, new(key.Track, key.Driver, version, StoredSheet.Stored(content), draft.Note, draft.CopiedFrom, draft.OnCar));
        });
        return state.Newest(key)!;
    }

    /// <summary>Says that the car is set up as a version says.</summary>
    /// <exception cref="StepRefusedException">SL-610, SL-365.</exception>
    public SheetVersion Fit(SheetKey key, int? version, string who)
    {
        var fitted = Find(key, version);
        _flow.Take(fitted.Key.Car, all => Fittings.Entry(time.GetUtcNow(), who, new(fitted.Key.Track, fitted.Key.Driver, Find(all, key, fitted.Version).Version)));
        return fitted;
    }

    /// <summary>The car file that sets the car up as a version says.</summary>
    public string CarFile(SheetVersion sheet) => CarFileText.Of(Saved(sheet.Key.Car).Model.SetUp(sheet.Content));

    private SavedCar Saved(string name) => cars.Find(name)
        ?? throw new StepRefusedException(CarCodes.CarNotFound, $"No car {PlainText.Clean(name, 80)} was saved.", "Save it first: scalelink car use FILE. See which there are: scalelink car list.");

    private static SheetVersion Find(SheetsState all, SheetKey key, int? version) =>
        (version is { } number ? all.Of(key).Find(v => v.Version == number) : all.Newest(key)) ?? throw new StepRefusedException(SheetCodes.NotFound, all.Newest(key) is { } newest
            ? $"There is no version {version} of the setup sheet of {newest.Key.Words}; the newest is {newest.Version}." : $"There is no setup sheet of {key.Words}.", "See which there are: scalelink sheet list.");

    private static StepRefusedException Overtaken(SheetKey key, SheetVersion? newest) => newest is null
        ? new(SheetCodes.Overtaken, $"There is no setup sheet of {key.Words} yet.", "Save it as a new one.")
        : new(SheetCodes.Overtaken, $"Version {newest.Version} of {newest.Key.Words} was saved meanwhile by {newest.Who}, {LocalTime.Second(newest.At)}.",
            "Look at what it changed, then save again on top of it: scalelink sheet diff. What you typed is not on record.");
}
