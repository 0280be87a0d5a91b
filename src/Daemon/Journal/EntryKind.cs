using System.Text.Json;
using System.Text.Json.Nodes;

namespace ScaleLink.Daemon.Journal;

/// <summary>One entry as its workflow understands it.</summary>
/// <param name="Id">Its number.</param>
/// <param name="At">When it happened, UTC.</param>
/// <param name="Subject">What it is about, such as a pad's serial number.</param>
/// <param name="Who">Who did it.</param>
/// <param name="Body">What it says.</param>
internal sealed record JournalEntry<T>(long Id, DateTimeOffset At, string Subject, string Who, T Body);

/// <summary>
/// One kind of entry: how it is written, and how every shape that was ever written is read. A body without <c>v</c> is of version 1; each upcaster
/// turns a body into that of the next version, so that only the newest shape has a type. What cannot be read is left out by name
/// (<see cref="LedgerDatabase.LeftOut"/>) and costs nothing else.
/// </summary>
/// <param name="name">As it stands in the ledger; part of every hash, so never renamed.</param>
/// <param name="json">How its type is written.</param>
/// <param name="upcasters">From version 1 to 2, from 2 to 3, and so on.</param>
internal sealed class EntryKind<T>(string name, JsonSerializerOptions? json = null, params IReadOnlyList<Func<JsonNode, JsonNode>> upcasters)
    where T : notnull
{
    private const string VersionField = "v";

    /// <summary>As it stands in the ledger.</summary>
    public string Name => name;

    /// <summary>Version of what is written now.</summary>
    public int Version => upcasters.Count + 1;

    /// <summary>Writes an entry; it is on the disk when this returns.</summary>
    public JournalEntry<T> Append(LedgerDatabase ledger, DateTimeOffset at, string subject, string who, T body)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        var entry = ledger.Append(at, name, subject, who, Write(body));
        return new(entry.Id, entry.At, subject, who, body);
    }

    /// <summary>The newest entry about that subject that can be read.</summary>
    public JournalEntry<T>? Newest(LedgerDatabase ledger, string subject)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        for (var entry = ledger.Newest(name, subject); entry is not null; entry = ledger.Newest(name, subject, before: entry.Id))
            if (Read(ledger, entry) is { } read)
                return read;
        return null;
    }

    /// <summary>All entries that can be read, oldest first; with a subject, only those about it.</summary>
    public IEnumerable<JournalEntry<T>> All(LedgerDatabase ledger, string? subject = null)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        return ledger.Entries(name, subject).Select(entry => Read(ledger, entry)).OfType<JournalEntry<T>>();
    }

    private JournalEntry<T>? Read(LedgerDatabase ledger, LedgerEntry entry)
    {
        try
        {
            return new(entry.Id, entry.At, entry.Subject, entry.Who, Read(entry.Body));
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException or ArgumentException or FormatException or KeyNotFoundException)
        {
            ledger.LeftOut.Add(entry.Id, name, entry.Subject, e.Message);
            return null;
        }
    }

    private T Read(string body)
    {
        var node = JsonNode.Parse(body);
        var version = node is JsonObject fields && fields[VersionField] is { } v ? v.GetValue<int>() : 1;
        if (version < 1 || version > Version)
            throw new JsonException($"it is of version {version}, and this build reads up to version {Version}");
        foreach (var upcast in upcasters.Skip(version - 1))
            node = upcast(node ?? throw new JsonException("the entry is empty"));
        return node.Deserialize<T>(json) ?? throw new JsonException("the entry is empty");
    }

    private string Write(T body)
    {
        if (Version == 1)
            return JsonSerializer.Serialize(body, json);
        var fields = JsonSerializer.SerializeToNode(body, json)!.AsObject();
        fields[VersionField] = Version;
        return fields.ToJsonString(json);
    }
}
