using Grpc.Core;
using Grpc.Net.Client;
using ScaleLink.Api.V1;

namespace Shared.Rig;

/// <summary>The daemon, as a process of its own, and a channel to it.</summary>
internal sealed class DaemonProcess : IDisposable
{
    private static readonly TimeSpan StartWithin = TimeSpan.FromSeconds(90);

    public DaemonProcess(string bayFile, int grpcPort, params string[] more)
        : this([], bayFile, grpcPort, more)
    {
    }

    /// <param name="through">What starts it, as in <see cref="ChildProcess"/>.</param>
    /// <param name="bayFile">Its bay file.</param>
    /// <param name="grpcPort">Where it answers.</param>
    /// <param name="more">Further arguments.</param>
    public DaemonProcess(IReadOnlyList<string> through, string bayFile, int grpcPort, params string[] more)
    {
        Process = new ChildProcess(through, "ScaleLink.Daemon", "scalelinkd.dll", ["--bay", bayFile, "--exit-with-stdin", .. more]);
        Channel = GrpcChannel.ForAddress($"http://127.0.0.1:{grpcPort}");
        Feed = new Feed.FeedClient(Channel);
        Pads = new Pads.PadsClient(Channel);
        Control = new PadControl.PadControlClient(Channel);
        CalibrationProcedures = new CalibrationProcedures.CalibrationProceduresClient(Channel);
        CalibrationProcedureControl = new CalibrationProcedureControl.CalibrationProcedureControlClient(Channel);
        Cars = new Cars.CarsClient(Channel);
        SetupSheets = new SetupSheets.SetupSheetsClient(Channel);
        SetupSheetControl = new SetupSheetControl.SetupSheetControlClient(Channel);
        CarControl = new CarControl.CarControlClient(Channel);
        Patch = new Patch.PatchClient(Channel);
        PatchControl = new PatchControl.PatchControlClient(Channel);
        InclinometerZeros = new InclinometerZeros.InclinometerZerosClient(Channel);
        InclinometerZeroControl = new InclinometerZeroControl.InclinometerZeroControlClient(Channel);
        WorkSessions = new WorkSessions.WorkSessionsClient(Channel);
        WorkSessionControl = new WorkSessionControl.WorkSessionControlClient(Channel);
        Wait.Until(Answers, StartWithin, () => $"the daemon answers. {Process.Said}");
    }

    public ChildProcess Process { get; }

    public GrpcChannel Channel { get; }

    public Feed.FeedClient Feed { get; }

    public Pads.PadsClient Pads { get; }

    public PadControl.PadControlClient Control { get; }

    public CalibrationProcedures.CalibrationProceduresClient CalibrationProcedures { get; }

    public CalibrationProcedureControl.CalibrationProcedureControlClient CalibrationProcedureControl { get; }
    public Cars.CarsClient Cars { get; }
    public SetupSheets.SetupSheetsClient SetupSheets { get; }
    public SetupSheetControl.SetupSheetControlClient SetupSheetControl { get; }

    public CarControl.CarControlClient CarControl { get; }

    public Patch.PatchClient Patch { get; }

    public PatchControl.PatchControlClient PatchControl { get; }

    public InclinometerZeros.InclinometerZerosClient InclinometerZeros { get; }

    public InclinometerZeroControl.InclinometerZeroControlClient InclinometerZeroControl { get; }

    public WorkSessions.WorkSessionsClient WorkSessions { get; }

    public WorkSessionControl.WorkSessionControlClient WorkSessionControl { get; }

    /// <summary>The newest loads, or nothing in the first moments.</summary>
    public Loads? Loads()
    {
        try
        {
            return Feed.GetLoads(new GetLoadsRequest());
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.Unavailable)
        {
            return null;
        }
    }

    public Pad Pad(string corner) => Pads.ListPads(new ListPadsRequest()).Pads.Single(p => p.Corner.ToString().Equals(corner, StringComparison.OrdinalIgnoreCase));

    public void Dispose()
    {
        Channel.Dispose();
        Process.Dispose();
    }

    private bool Answers()
    {
        Assert.False(Process.HasExited, $"The daemon has ended. {Process.Said}");
        try
        {
            return Feed.GetClock(new GetClockRequest()).StartId.Length > 0;
        }
        catch (RpcException)
        {
            return false;
        }
    }
}
