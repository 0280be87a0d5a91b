using ScaleLink.Probing.Loading;
using ScaleLink.Probing.Ports;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Listening;

/// <summary>
/// Reads the devices found on one port for as long as it is wanted, in the way in which they were found. A port that goes away is opened again when it is back.
/// </summary>
/// <param name="finding">The port and what speaks on it.</param>
/// <param name="time">For pauses and times of arrival.</param>
internal sealed class PortListener(PortFinding finding, TimeProvider time)
{
    private const int UsualBaud = 115200;
    private static readonly TimeSpan AtMostEvery = TimeSpan.FromMilliseconds(50);
    private static readonly TimeSpan OpenAgain = TimeSpan.FromSeconds(1);

    /// <summary>Reads until <paramref name="stop"/>; blocks its thread.</summary>
    /// <param name="take">Told which device says what; at most twenty times a second for each.</param>
    /// <param name="lost">Told why the port cannot be read; nothing once it can again.</param>
    /// <param name="stop">Ends it within a tenth of a second or so.</param>
    public void Run(Action<Found, HeardNumbers> take, Action<Diagnostic?> lost, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                using var port = ProbedPort.Open(finding.Port, finding.Baud ?? UsualBaud, finding.Format, time);
                lost(null);
                Read(port, take, stop);
            }
            catch (PortException e)
            {
                lost(e.Diagnostic);
                stop.WaitHandle.WaitOne(OpenAgain);
            }
        }
    }

    private void Read(ProbedPort port, Action<Found, HeardNumbers> take, CancellationToken stop)
    {
        var slaves = finding.Found.OfType<FoundSlave>().ToList();
        if (slaves.Count > 0)
        {
            new SlaveNumbers(port, slaves, time).Run(take, stop);
            return;
        }

        if (finding.Found.FirstOrDefault(f => f.Protocol is not null) is not { } device)
            return;
        ISpokenNumbers spoken = device is FoundText text ? new TextNumbers(text) : new PadFrameNumbers();
        var newest = TimeSpan.MinValue;
        while (!stop.IsCancellationRequested)
        {
            port.Listen(AtMostEvery, bytes =>
            {
                foreach (var values in spoken.Take(bytes))
                {
                    var now = time.GetElapsedTime(0);
                    if (newest > TimeSpan.MinValue && now - newest < AtMostEvery)
                        continue;
                    newest = now;
                    take(device, new HeardNumbers(now, [.. Enumerable.Range(0, values.Count).Select(at => new NumberPlace(at, NumberForm.Plain))], values));
                }

                return true;
            }, stop);
        }
    }
}

/// <summary>What a device said at one time.</summary>
/// <param name="At">When, on a clock that only runs forward, the same for all ports.</param>
/// <param name="Places">Where its numbers stand.</param>
/// <param name="Values">A number for each.</param>
internal sealed record HeardNumbers(TimeSpan At, IReadOnlyList<NumberPlace> Places, IReadOnlyList<double> Values);
