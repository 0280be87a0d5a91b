using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ScaleLink.Daemon.Journal;

/// <summary>An entry letter by letter as it stands in the file, whether it makes sense or not. These texts, in this order, are what is hashed: they are never renamed.</summary>
internal sealed record StoredEntry(long Id, string At, string Kind, string Subject, string Who, string Software, string Body, string Hash)
{
    private const string TimeFormat = "yyyy-MM-ddTHH:mm:ss.fffZ";

    /// <summary>A new entry behind the one with that hash.</summary>
    public static StoredEntry Following(string last, DateTimeOffset at, string kind, string subject, string who, string software, string body)
    {
        var entry = new StoredEntry(0, Stamp(at), kind, subject, who, software, body, "");
        return entry with { Hash = entry.HashAfter(last) };
    }

    /// <summary>An entry as it is stored.</summary>
    public static StoredEntry Of(LedgerEntry entry) => new(entry.Id, Stamp(entry.At), entry.Kind, entry.Subject, entry.Who, entry.Software, entry.Body, entry.Hash);

    /// <summary>The columns but for the number, by parameter.</summary>
    public (string Name, object Value)[] Columns =>
        [("$at", At), ("$kind", Kind), ("$subject", Subject), ("$who", Who), ("$software", Software), ("$body", Body), ("$hash", Hash)];

    /// <summary>The hash that this entry has behind one with that hash.</summary>
    public string HashAfter(string last) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001f', last, At, Kind, Subject, Who, Software, Body))));

    /// <summary>The entry; nothing when its time is none.</summary>
    public LedgerEntry? Read() => DateTimeOffset.TryParseExact(At, TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at)
        ? new LedgerEntry(Id, at, Kind, Subject, Who, Software, Body, Hash)
        : null;

    private static string Stamp(DateTimeOffset at) => at.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture);
}
