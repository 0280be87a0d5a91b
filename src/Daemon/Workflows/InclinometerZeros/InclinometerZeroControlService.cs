using Grpc.Core;
using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.InclinometerZeros;

/// <summary>The steps of a reversal test over gRPC.</summary>
internal sealed class InclinometerZeroControlService(LiveBay bay, InclinometerZeroDesk desk, InclinometerZeroMapping mapping, BayClock clock, TimeProvider time) : Wire.InclinometerZeroControl.InclinometerZeroControlBase
{
    // Whoever reads has just put the pad down: more than twice the window, so that nobody has to press again.
    private const long PatienceNs = 5 * Nanoseconds.PerSecond;
    private const int LongestSerialNumber = 64;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    public override async Task<Wire.PadInclinometerZero> ReadTilt(Wire.ReadTiltRequest request, ServerCallContext context)
    {
        var (pad, who) = (bay.PadAt(request.Corner), ApiErrors.Who(request.Who));
        var step = new InclinometerZeroStep(PlainText.Clean(request.SerialNumber, LongestSerialNumber), request.HasNumber ? (int)Math.Min(request.Number, int.MaxValue) : null, request.SaidTurned);
        var until = clock.NowNs + PatienceNs;
        while (true)
            try
            {
                desk.Read(pad, step, who);
                return mapping.Pad(pad);
            }
            catch (StepRefusedException refused) when (refused.Diagnostic.Code == InclinometerCodes.PadNotAtRest && clock.NowNs < until)
            {
                await Task.Delay(Pause, time, context.CancellationToken);
            }
    }

    public override Task<Wire.PadInclinometerZero> AbandonInclinometerTest(Wire.AbandonInclinometerTestRequest request, ServerCallContext context)
    {
        var pad = bay.PadAt(request.Corner);
        desk.Abandon(pad, PlainText.Clean(request.SerialNumber, LongestSerialNumber), ApiErrors.Who(request.Who));
        return Task.FromResult(mapping.Pad(pad));
    }

    public override Task<Wire.PadInclinometerZero> ClearInclinometerZero(Wire.ClearInclinometerZeroRequest request, ServerCallContext context)
    {
        var pad = bay.PadAt(request.Corner);
        desk.Clear(pad, PlainText.Clean(request.SerialNumber, LongestSerialNumber), ApiErrors.Who(request.Who));
        return Task.FromResult(mapping.Pad(pad));
    }
}
