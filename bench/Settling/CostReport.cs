using ScaleLink.Measure;
using ScaleLink.Weighing.Settling;
using Weighing.Tests.Settling.Scenarios;

namespace ScaleLink.Bench.Settling;

/// <summary>What one block costs, against a moving average of one second on the same blocks.</summary>
static class CostReport
{
    const int Rounds = 200;

    public static void Print(int seed)
    {
        var record = Scenario.Friction.Record(seed, 0);
        var estimator = new SettlingEstimator(new());
        var ring = new Corners[20];
        var (sum, at) = (default(Corners), 0);
        var full = Measure(record.Blocks, block => estimator.Add(block));
        var plain = Measure(record.Blocks, block =>
        {
            sum += block - ring[at];
            ring[at] = block;
            at = (at + 1) % ring.Length;
        });
        Console.WriteLine($"\n== cost of a block of four pads: estimator {full.Microseconds:0.0} us, {full.Bytes:0.0} B allocated; "
            + $"moving average {plain.Microseconds:0.00} us, {plain.Bytes:0.0} B; ratio {full.Microseconds / plain.Microseconds:0}");
    }

    static (double Microseconds, double Bytes) Measure(Corners[] blocks, Action<Corners> add)
    {
        foreach (var block in blocks) add(block);
        var (start, bytes) = (TimeProvider.System.GetTimestamp(), GC.GetAllocatedBytesForCurrentThread());
        for (var round = 0; round < Rounds; round++)
            foreach (var block in blocks) add(block);
        var count = (double)Rounds * blocks.Length;
        return (TimeProvider.System.GetElapsedTime(start).TotalMicroseconds / count, (GC.GetAllocatedBytesForCurrentThread() - bytes) / count);
    }
}
