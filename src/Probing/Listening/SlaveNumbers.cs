using ScaleLink.Probing.Loading;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;
using ScaleLink.Probing.Search;

namespace ScaleLink.Probing.Listening;

/// <summary>Asks the slaves of one port in turn for the registers that they gave when they were found, and reads these in every form.</summary>
internal sealed class SlaveNumbers(ProbedPort port, IReadOnlyList<FoundSlave> slaves, TimeProvider time)
{
    // Ten questions a second to each: neighbours on a slow line still get their turn.
    private static readonly TimeSpan Round = TimeSpan.FromMilliseconds(100);

    public void Run(Action<Found, HeardNumbers> take, CancellationToken stop)
    {
        var search = new SlaveSearch(port);
        while (!stop.IsCancellationRequested)
        {
            var began = time.GetTimestamp();
            foreach (var slave in slaves)
            {
                if (stop.IsCancellationRequested || slave.Readable is not { } readable || search.Ask(readable.Question, stop) is not { Refusal: null } answer)
                    continue;
                ushort[] registers = [.. Enumerable.Range(0, answer.Data.Length / 2).Select(k => (ushort)(answer.Data[2 * k] << 8 | answer.Data[2 * k + 1]))];
                var now = TimeSpan.FromTicks(time.GetTimestamp() * TimeSpan.TicksPerSecond / time.TimestampFrequency);
                take(slave, new HeardNumbers(now, RegisterForms.Places(registers.Length), RegisterForms.Values(registers)));
            }

            if (Round - time.GetElapsedTime(began) is { Ticks: > 0 } pause)
                stop.WaitHandle.WaitOne(pause);
        }
    }
}
