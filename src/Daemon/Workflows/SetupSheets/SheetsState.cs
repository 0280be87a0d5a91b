using System.Collections.Immutable;
using ScaleLink.Daemon.Journal;

namespace ScaleLink.Daemon.Workflows.SetupSheets;

/// <summary>Every setup sheet with its versions, oldest first, and which version is on which car.</summary>
internal sealed record SheetsState(ImmutableDictionary<SheetKey, ImmutableList<SheetVersion>> Sheets, ImmutableDictionary<string, FittedSheet> OnCar)
{
    public static readonly SheetsState None = new(ImmutableDictionary<SheetKey, ImmutableList<SheetVersion>>.Empty, ImmutableDictionary<string, FittedSheet>.Empty);

    /// <summary>The versions of one sheet; none when there is no such sheet.</summary>
    public ImmutableList<SheetVersion> Of(SheetKey key) => Sheets.GetValueOrDefault(key, []);

    /// <summary>The newest version by entry; null when there is none.</summary>
    public SheetVersion? Newest(SheetKey key) => Of(key) is [.., var last] ? last : null;

    public SheetsState After(JournalEntry<StoredSheet> entry)
    {
        var (body, key) = (entry.Body, new SheetKey(entry.Subject, entry.Body.Track, entry.Body.Driver));
        // A sheet keeps the spelling of its names that it began with.
        var sheet = new SheetVersion(Of(key) is [var first, ..] ? first.Key : key, body.Version, body.Content(), body.Note, body.CopiedFrom, entry.At, entry.Who, entry.Id);
        return new(Sheets.SetItem(sheet.Key, Of(key).Add(sheet)), body.OnCar ? OnCar.SetItem(key.Car, new(sheet, entry.Id)) : OnCar);
    }

    public SheetsState After(JournalEntry<StoredFitting> entry)
    {
        var sheet = Of(new SheetKey(entry.Subject, entry.Body.Track, entry.Body.Driver)).Find(v => v.Version == entry.Body.Version)
            ?? throw new InvalidOperationException("the version that was fitted is missing");
        return this with { OnCar = OnCar.SetItem(entry.Subject, new(sheet, entry.Id)) };
    }
}

/// <summary>The version that is on a car, since that entry.</summary>
internal sealed record FittedSheet(SheetVersion Sheet, long Since);
