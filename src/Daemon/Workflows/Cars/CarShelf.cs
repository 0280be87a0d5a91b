using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>The cars that were saved, and which of them stands in the bay. Both live in the ledger; nothing is ever overwritten.</summary>
internal sealed class CarShelf
{
    private const string FromBayFile = "bay file";

    private static readonly EntryKind<Saved> CarKind = new("car");
    private static readonly EntryKind<Chosen> InBayKind = new("car-in-bay");
    // The shelf itself is read from the ledger whenever it is looked at.
    private static readonly FoldedKind<CarChoice, Saved> Savings = new(CarKind, (choice, _) => choice);

    private readonly LedgerDatabase _ledger;
    private readonly TimeProvider _time;
    private readonly string _bay;
    private readonly ILogger _log;
    private readonly FoldedKind<CarChoice, Chosen> _choices;
    private readonly Workflow<CarChoice> _flow;

    /// <summary>Takes up what the ledger says.</summary>
    public CarShelf(LedgerDatabase ledger, BayConfiguration bay, TimeProvider time, ILogger<CarShelf>? log = null)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(bay);
        (_ledger, _time, _bay, _log) = (ledger, time, bay.Bay, log ?? NullLogger<CarShelf>.Instance);
        _choices = new(InBayKind, (_, entry) => new(true, entry.Body is { Name: { } name, Hash: { } hash } ? Find(name, hash) : null), isWhole: true);
        _flow = new(ledger, new(false, null), _bay, _choices);
        // The bay file speaks only until somebody at the bay has: a restart must not bring an old car back.
        if (bay.CarFile is { } file && !_flow.State.IsSaid)
            Use(Save(file, FromBayFile), FromBayFile);
    }

    /// <summary>The car in the bay; null when nobody said which.</summary>
    public SavedCar? InBay => _flow.State.Car;

    /// <summary>Told after another car came into the bay, or none.</summary>
    public event Action? Changed;

    /// <summary>The newest revision of every car, by name.</summary>
    public IReadOnlyList<SavedCar> All() =>
        [.. CarKind.All(_ledger).GroupBy(e => e.Subject).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => Read(g.Last())).OfType<SavedCar>()];

    /// <summary>A car by name, and by hash when a certain revision is meant.</summary>
    public SavedCar? Find(string name, string? hash = null) =>
        CarKind.All(_ledger, name).Reverse().Select(Read).FirstOrDefault(c => c is not null && (hash is null || c.Hash == hash));

    /// <summary>Saves a car file; a file that is the newest of its car already is not saved again.</summary>
    /// <exception cref="DiagnosticException">The file has mistakes; all are listed.</exception>
    public SavedCar Save(string file, string who)
    {
        var read = CarFile.Read(file);
        if (read.Car is not { } car)
            throw new DiagnosticException(read.Mistakes);
        foreach (var earlier in read.EarlierNames)
            _log.LogWarning("Car {Car}: {Code} {Message} {Remedy}", car.Name, earlier.Code.Text, earlier.Message, earlier.Remedy);
        var hash = HashOf(file);
        _flow.Alone(() =>
        {
            if (Find(car.Name)?.Hash != hash)
                _flow.Take(car.Name, _ => Savings.Entry(_time.GetUtcNow(), who, new Saved(file)));
        });
        return Find(car.Name, hash)!;
    }

    /// <summary>Says which car stands in the bay.</summary>
    public void Use(SavedCar? car, string who)
    {
        _flow.Take(_bay, _ => _choices.Entry(_time.GetUtcNow(), who, new Chosen(car?.Model.Name, car?.Hash)));
        Changed?.Invoke();
    }

    private static SavedCar? Read(JournalEntry<Saved> entry)
    {
        var file = entry.Body.File;
        // A file that an older version accepted and this one does not is no car to work with.
        return CarFile.Read(file).Car is { } car ? new(car, file, HashOf(file), entry.At, entry.Who, entry.Id) : null;
    }

    private static string HashOf(string file) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(file)));

    private sealed record Saved(string File);

    private sealed record Chosen(string? Name, string? Hash);

    /// <param name="IsSaid">Somebody has said which car, or that none does.</param>
    /// <param name="Car">The car in the bay.</param>
    private sealed record CarChoice(bool IsSaid, SavedCar? Car);
}
