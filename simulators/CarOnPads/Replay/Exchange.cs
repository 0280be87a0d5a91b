using ScaleLink.Protocol.Recordings;

namespace CarOnPads.Replay;

/// <summary>A recorded question, in hexadecimal digits, and what came before the next one, with its delay behind the question in ns.</summary>
sealed record Exchange(string Question, IReadOnlyList<(long AfterNs, ReadOnlyMemory<byte> Bytes)> Answers)
{
    /// <summary>The exchanges of a link recording, in order. What came before the first question belongs to none.</summary>
    public static IEnumerable<Exchange> Of(IReadOnlyList<RecordingEvent> events)
    {
        RecordingEvent? asked = null;
        List<(long, ReadOnlyMemory<byte>)> answers = [];
        foreach (var happened in events.Where(e => e.HasBytes))
        {
            if (happened.Kind == RecordingEventKind.Received)
            {
                if (asked is not null)
                    answers.Add((happened.AtNs - asked.AtNs, happened.Bytes));
                continue;
            }

            if (asked is not null)
                yield return new Exchange(Convert.ToHexString(asked.Bytes.Span), answers);
            (asked, answers) = (happened, []);
        }

        if (asked is not null)
            yield return new Exchange(Convert.ToHexString(asked.Bytes.Span), answers);
    }
}
