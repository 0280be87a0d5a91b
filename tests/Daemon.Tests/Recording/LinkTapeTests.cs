using CsCheck;
using ScaleLink.Daemon.Recording;
using ScaleLink.Protocol.Recordings;
using Shared;

namespace Daemon.Tests.Recording;

public class LinkTapeTests
{
    private const int Capacity = LinkTape.LeastCapacity;
    private const long Second = 1_000_000_000;
    private const long Minute = 60 * Second;

    [Fact]
    public void The_newest_is_there_whole_and_in_order_however_long_it_runs() => Seeded.Check(Gen.Int[1, 60_000].Array[1, 60], 60, lengths =>
    {
        var tape = new LinkTape(Capacity, Minute);
        var written = new List<byte[]>();
        foreach (var length in lengths)
        {
            var bytes = Enumerable.Range(0, length).Select(k => (byte)(k + written.Count)).ToArray();
            written.Add(bytes);
            tape.Write(RecordingEventKind.Received, bytes, written.Count);
        }

        var kept = tape.Since(0);
        Assert.NotEmpty(kept);
        Assert.Equal(written.TakeLast(kept.Count), kept.Select(e => e.Bytes.ToArray()));
        // What was let go of would not have fitted.
        if (kept.Count < written.Count)
            Assert.True(written.TakeLast(kept.Count + 1).Sum(b => b.Length + 13L) > Capacity);
    });

    [Fact]
    public void What_is_older_than_its_span_is_let_go_of()
    {
        var tape = new LinkTape(Capacity, Minute);
        for (var second = 0; second <= 100; second++)
            tape.Write(RecordingEventKind.Note, $"{second}", second * Second);
        Assert.Equal(Enumerable.Range(40, 61).Select(s => $"{s}"), tape.Since(0).Select(e => e.Text));
        Assert.Equal(["99", "100"], tape.Since(99 * Second).Select(e => e.Text));
    }

    [Fact]
    public void More_than_fits_leaves_its_end()
    {
        var tape = new LinkTape(Capacity, Minute);
        var much = new byte[2 * Capacity];
        much[^1] = 7;
        tape.Write(RecordingEventKind.Received, much, 1);
        Assert.Equal(7, Assert.Single(tape.Since(0)).Bytes.Span[^1]);
    }

    [Fact]
    public void Writing_allocates_nothing()
    {
        var tape = new LinkTape(Capacity, Minute);
        var bytes = new byte[60];
        tape.Write(RecordingEventKind.Received, bytes, 0);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var k = 1; k < 20_000; k++)
            tape.Write(RecordingEventKind.Received, bytes, k);
        // A collection meanwhile may close the thread's piece of the heap early, which counts some kB; one object a write would be half a megabyte.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 20_000);
    }
}
