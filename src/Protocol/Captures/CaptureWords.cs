namespace ScaleLink.Protocol.Captures;

/// <summary>The words of the text form.</summary>
static class CaptureWords
{
    public const string Bay = "bay", Link = "link", Protocol = "protocol", Line = "line", Device = "device", Started = "started", Run = "run",
        Software = "software", Reason = "reason", Note = "note";

    public const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";

    static readonly Dictionary<CaptureEventKind, string> s_words = new()
    {
        [CaptureEventKind.Received] = "received",
        [CaptureEventKind.Sent] = "sent",
        [CaptureEventKind.Open] = "open",
        [CaptureEventKind.NotOpen] = "not-open",
        [CaptureEventKind.HangUp] = "hang-up",
        [CaptureEventKind.Fault] = "fault",
        [CaptureEventKind.FaultOver] = "fault-over",
        [CaptureEventKind.Note] = "note",
    };

    static readonly Dictionary<string, CaptureEventKind> s_kinds = s_words.ToDictionary(w => w.Value, w => w.Key, StringComparer.Ordinal);

    public static IEnumerable<string> Events => s_kinds.Keys;

    public static string Of(CaptureEventKind kind) => s_words[kind];

    public static bool TryKind(string word, out CaptureEventKind kind) => s_kinds.TryGetValue(word, out kind);
}
