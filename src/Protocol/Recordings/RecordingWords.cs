namespace ScaleLink.Protocol.Recordings;

/// <summary>The words of the text form.</summary>
static class RecordingWords
{
    public const string Bay = "bay", Link = "link", Protocol = "protocol", Line = "line", Device = "device", Started = "started", StartId = "start-id", EarlierStartId = "run",
        Software = "software", Reason = "reason", Note = "note";

    public const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";

    static readonly Dictionary<RecordingEventKind, string> s_words = new()
    {
        [RecordingEventKind.Received] = "received",
        [RecordingEventKind.Sent] = "sent",
        [RecordingEventKind.Open] = "open",
        [RecordingEventKind.NotOpen] = "not-open",
        [RecordingEventKind.HangUp] = "hang-up",
        [RecordingEventKind.Fault] = "fault",
        [RecordingEventKind.FaultOver] = "fault-over",
        [RecordingEventKind.Note] = "note",
    };

    static readonly Dictionary<string, RecordingEventKind> s_kinds = s_words.ToDictionary(w => w.Value, w => w.Key, StringComparer.Ordinal);

    public static IEnumerable<string> Events => s_kinds.Keys;

    public static string Of(RecordingEventKind kind) => s_words[kind];

    public static bool TryKind(string word, out RecordingEventKind kind) => s_kinds.TryGetValue(word, out kind);
}
