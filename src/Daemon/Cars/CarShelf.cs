using System.Security.Cryptography;
using System.Text;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;

namespace ScaleLink.Daemon.Cars;

/// <summary>The cars that were saved, and which of them stands in the bay. Both live in the ledger; nothing is ever overwritten.</summary>
public sealed class CarShelf
{
    private static readonly EntryKind<Saved> CarKind = new("car");
    private static readonly EntryKind<Chosen> InBayKind = new("car-in-bay");

    private readonly LedgerDatabase _ledger;
    private readonly TimeProvider _time;
    private readonly string _bay;
    private readonly Lock _gate = new();
    private SavedCar? _inBay;

    /// <summary>Takes up what the ledger says.</summary>
    public CarShelf(LedgerDatabase ledger, BayConfiguration bay, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(bay);
        (_ledger, _time, _bay) = (ledger, time, bay.Bay);
        if (InBayKind.Newest(ledger, _bay) is { } entry)
            _inBay = entry.Body is { Name: { } name, Hash: { } hash } ? Find(name, hash) : null;
        else if (bay.CarFile is { } file)
            _inBay = FirstCar(file);
    }

    /// <summary>The car in the bay; null when nobody said which.</summary>
    public SavedCar? InBay
    {
        get
        {
            lock (_gate)
                return _inBay;
        }
    }

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
        var hash = HashOf(file);
        if (Find(car.Name) is { } newest && newest.Hash == hash)
            return newest;
        var entry = CarKind.Append(_ledger, _time.GetUtcNow(), car.Name, who, new Saved(file));
        return new(car, file, hash, entry.At, who, entry.Id);
    }

    /// <summary>Says which car stands in the bay.</summary>
    public void Use(SavedCar? car, string who)
    {
        lock (_gate)
        {
            InBayKind.Append(_ledger, _time.GetUtcNow(), _bay, who, new Chosen(car?.Model.Name, car?.Hash));
            _inBay = car;
        }

        Changed?.Invoke();
    }

    // The bay file speaks only until somebody at the bay has: a restart must not bring an old car back.
    private SavedCar FirstCar(string file)
    {
        var car = Save(file, "bay file");
        Use(car, "bay file");
        return car;
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
}
