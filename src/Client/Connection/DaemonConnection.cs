using Grpc.Core;
using Grpc.Core.Interceptors;
using Grpc.Net.Client;
using ScaleLink.Api.V1;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Connection;

/// <summary>
/// A way to one daemon. Connects by itself when something is asked, and again after every loss. Also keeps the daemon's clock
/// in sight as long as it lives.
/// </summary>
public sealed class DaemonConnection : IAsyncDisposable
{
    /// <summary>Where a daemon listens unless told otherwise.</summary>
    public const string DefaultAddress = "http://127.0.0.1:5481";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private readonly GrpcChannel _channel;
    private readonly ClockKeeper _keeper;

    /// <summary>Prepares the way; nothing is sent yet.</summary>
    /// <param name="address">The daemon's gRPC port, <c>http://host:port</c>.</param>
    /// <param name="time">Own clock; the system's when absent.</param>
    /// <exception cref="ClientException">SL-421: this is no address.</exception>
    public DaemonConnection(string address, TimeProvider? time = null)
    {
        Address = Parse(address);
        Time = time ?? TimeProvider.System;
        _channel = GrpcChannel.ForAddress(Address, new GrpcChannelOptions { HttpHandler = Handler(), DisposeHttpClient = true });
        Clock = new DaemonClock(Time);
        var steps = new StepAnswers(Time);
        steps.Late += () => AnswerLate?.Invoke();
        var control = _channel.Intercept(steps);
        Feed = new Feed.FeedClient(_channel);
        Pads = new Api.V1.Pads.PadsClient(_channel);
        PadControl = new PadControl.PadControlClient(control);
        CalibrationProcedures = new CalibrationProcedures.CalibrationProceduresClient(_channel);
        CalibrationProcedureControl = new CalibrationProcedureControl.CalibrationProcedureControlClient(control);
        PadInterchanges = new PadInterchanges.PadInterchangesClient(_channel);
        PadInterchangeControl = new PadInterchangeControl.PadInterchangeControlClient(control);
        Cars = new Api.V1.Cars.CarsClient(_channel);
        CarControl = new CarControl.CarControlClient(control);
        Patch = new Patch.PatchClient(_channel);
        PatchControl = new PatchControl.PatchControlClient(control);
        InclinometerZeros = new Api.V1.InclinometerZeros.InclinometerZerosClient(_channel);
        InclinometerZeroControl = new InclinometerZeroControl.InclinometerZeroControlClient(control);
        SiteCheck = new SiteChecks.SiteChecksClient(_channel);
        SiteCheckControl = new SiteCheckControl.SiteCheckControlClient(control);
        SetupSheets = new Api.V1.SetupSheets.SetupSheetsClient(_channel);
        SetupSheetControl = new SetupSheetControl.SetupSheetControlClient(control);
        WorkSessions = new Api.V1.WorkSessions.WorkSessionsClient(_channel);
        WorkSessionControl = new WorkSessionControl.WorkSessionControlClient(control);
        Recorder = new Recorder.RecorderClient(_channel);
        RecorderControl = new RecorderControl.RecorderControlClient(control);
        Setup = new Api.V1.Setup.SetupClient(_channel);
        // No ledger yet, and so no steps on record to ask for.
        SetupControl = new SetupControl.SetupControlClient(_channel);
        _keeper = new ClockKeeper(Feed, Clock, Time);
    }

    /// <summary>The daemon's address.</summary>
    public Uri Address { get; }

    /// <summary>The daemon's clock as seen from here; asked for as long as a feed is open.</summary>
    public DaemonClock Clock { get; }

    /// <summary>Live loads.</summary>
    public Feed.FeedClient Feed { get; }

    /// <summary>The pads and their health.</summary>
    public Api.V1.Pads.PadsClient Pads { get; }

    /// <summary>What changes the pads.</summary>
    public PadControl.PadControlClient PadControl { get; }

    /// <summary>Calibrations and the calibration procedures that made them.</summary>
    public CalibrationProcedures.CalibrationProceduresClient CalibrationProcedures { get; }

    /// <summary>What calibrates pads and puts calibrations into effect.</summary>
    public CalibrationProcedureControl.CalibrationProcedureControlClient CalibrationProcedureControl { get; }

    /// <summary>Pads interchanged under one car.</summary>
    public PadInterchanges.PadInterchangesClient PadInterchanges { get; }

    /// <summary>The steps of moving pads round.</summary>
    public PadInterchangeControl.PadInterchangeControlClient PadInterchangeControl { get; }

    /// <summary>Cars, and what statics says about them.</summary>
    public Api.V1.Cars.CarsClient Cars { get; }

    /// <summary>What changes the cars.</summary>
    public CarControl.CarControlClient CarControl { get; }

    /// <summary>How level the pads stand to each other.</summary>
    public Patch.PatchClient Patch { get; }

    /// <summary>What changes the patch.</summary>
    public PatchControl.PatchControlClient PatchControl { get; }

    /// <summary>Zeros of the pads' inclinometers.</summary>
    public Api.V1.InclinometerZeros.InclinometerZerosClient InclinometerZeros { get; }

    /// <summary>The steps of a reversal test.</summary>
    public InclinometerZeroControl.InclinometerZeroControlClient InclinometerZeroControl { get; }

    /// <summary>The site check.</summary>
    public SiteChecks.SiteChecksClient SiteCheck { get; }

    /// <summary>What begins and ends a watch.</summary>
    public SiteCheckControl.SiteCheckControlClient SiteCheckControl { get; }

    /// <summary>Setup sheets in versions.</summary>
    public Api.V1.SetupSheets.SetupSheetsClient SetupSheets { get; }

    /// <summary>What changes setup sheets.</summary>
    public SetupSheetControl.SetupSheetControlClient SetupSheetControl { get; }

    /// <summary>Work sessions.</summary>
    public Api.V1.WorkSessions.WorkSessionsClient WorkSessions { get; }

    /// <summary>The steps of a work session.</summary>
    public WorkSessionControl.WorkSessionControlClient WorkSessionControl { get; }

    /// <summary>How far a daemon without a bay file is with setting one up.</summary>
    public Api.V1.Setup.SetupClient Setup { get; }

    /// <summary>What sets a bay up.</summary>
    public SetupControl.SetupControlClient SetupControl { get; }

    /// <summary>What the links have carried.</summary>
    public Recorder.RecorderClient Recorder { get; }

    /// <summary>What writes it to files.</summary>
    public RecorderControl.RecorderControlClient RecorderControl { get; }

    internal TimeProvider Time { get; }

    /// <summary>The answer to a step is late or lost; the daemon is being asked whether the step is on record.</summary>
    internal event Action? AnswerLate;

    /// <summary>The address as people write it.</summary>
    internal string Name => Address.GetLeftPart(UriPartial.Authority);

    /// <summary>Asks once, with a deadline, and turns every failure into a trouble with a code.</summary>
    /// <param name="call">The call, to be made with the options given.</param>
    /// <param name="stop">Gives up.</param>
    /// <exception cref="ClientException">The daemon is away, slow, or refuses: SL-420 to SL-424 or the daemon's own code.</exception>
    public Task<T> Ask<T>(Func<CallOptions, AsyncUnaryCall<T>> call, CancellationToken stop = default) => Ask(call, Patience, stop);

    /// <summary>The same for a call that takes its time.</summary>
    internal async Task<T> Ask<T>(Func<CallOptions, AsyncUnaryCall<T>> call, TimeSpan patience, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(call);
        try
        {
            using var asked = call(new CallOptions(deadline: DateTime.SpecifyKind(Time.GetUtcNow().UtcDateTime + patience, DateTimeKind.Utc), cancellationToken: stop));
            return await asked.ResponseAsync.ConfigureAwait(false);
        }
        catch (RpcException e) when (e.StatusCode == StatusCode.Cancelled && stop.IsCancellationRequested)
        {
            throw new OperationCanceledException(e.Message, e, stop);
        }
        catch (RpcException e)
        {
            throw new ClientException(DiagnosticReader.Read(e, Name), e);
        }
    }

    /// <summary>Ends all calls.</summary>
    public async ValueTask DisposeAsync()
    {
        await _keeper.DisposeAsync().ConfigureAwait(false);
        _channel.Dispose();
    }

    // Before the first value is judged, the clock must have been seen.
    internal Task SeeClock(CancellationToken stop) => _keeper.Ask(stop);

    private static Uri Parse(string address) =>
        Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is "http" or "https" && uri.Host.Length > 0
            ? uri
            : throw new ClientException(new Diagnostic(ConnectionCodes.NoAddress, $"\"{PeerText.Clean(address ?? "", 80)}\" is no address of a daemon.", $"Write it like {DefaultAddress}."));

    // A cable pulled between two machines sends no word: only an unanswered ping tells.
    private static SocketsHttpHandler Handler() => new()
    {
        ConnectTimeout = TimeSpan.FromSeconds(3),
        KeepAlivePingDelay = TimeSpan.FromSeconds(3),
        KeepAlivePingTimeout = TimeSpan.FromSeconds(3),
        KeepAlivePingPolicy = HttpKeepAlivePingPolicy.WithActiveRequests,
        PooledConnectionIdleTimeout = Timeout.InfiniteTimeSpan,
        EnableMultipleHttp2Connections = true,
    };
}
