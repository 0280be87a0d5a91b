using ScaleLink.Daemon.Pipeline;

namespace ScaleLink.Daemon.Links;

/// <summary>
/// Keeps one pad's link going: open, run, fault, wait, open again, on a thread of its own.
/// A blocking read on its own thread costs about a third of the processor time that asynchronous reads do.
/// </summary>
public sealed class LinkSupervisor : IDisposable
{
    private const int BufferSize = 65536;
    private static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(2);

    private readonly LinkAddress _address;
    private readonly ILinkFactory _factory;
    private readonly Func<IPadProtocol> _newProtocol;
    private readonly PadChannel _pad;
    private readonly BayClock _clock;
    private readonly ILogger _log;
    private readonly Backoff _backoff;
    private readonly ManualResetEventSlim _stop = new();
    private readonly Lock _gate = new();
    private Thread? _thread;
    private ILink? _link;
    private string? _lastCode;

    /// <summary>A supervisor at rest; <see cref="Start"/> sets it going.</summary>
    public LinkSupervisor(LinkAddress address, ILinkFactory factory, Func<IPadProtocol> newProtocol, PadChannel pad, BayClock clock, ILogger log)
    {
        ArgumentNullException.ThrowIfNull(address);
        (_address, _factory, _newProtocol, _pad, _clock, _log) = (address, factory, newProtocol, pad, clock, log);
        _backoff = new Backoff(new Random(address.Name.GetHashCode(StringComparison.Ordinal)));
    }

    /// <summary>Starts the thread.</summary>
    public void Start()
    {
        _thread = new Thread(Supervise) { IsBackground = true, Name = $"link {_pad.Corner}" };
        _thread.Start();
    }

    /// <summary>Ends the link and its thread.</summary>
    public void Dispose()
    {
        _stop.Set();
        lock (_gate)
            _link?.Dispose();
        if (_thread?.Join(StopWithin) ?? true)
            _stop.Dispose();
    }

    private void Supervise()
    {
        while (!_stop.IsSet)
        {
            try
            {
                Run();
            }
            catch (LinkFaultException e)
            {
                Report(e.Fault);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // A mistake of ours must not end the pad: it costs this link, and the next one starts fresh.
                _log.LogError(e, "{Corner} link broke", _pad.Corner);
                Report(LinkFault.Other(_address.Name, e.Message));
            }

            _stop.Wait(_backoff.Next());
        }
    }

    private void Report(LinkFault fault)
    {
        if (_stop.IsSet)
            return;
        _pad.LinkFailed(fault);
        // The same fault at every attempt would bury the log.
        if (fault.Code != _lastCode)
            _log.LogWarning("{Corner} {Code}: {Message} {Mend}", _pad.Corner, fault.Code, fault.Message, fault.Mend);
        _lastCode = fault.Code;
    }

    private void Run()
    {
        using var link = Open();
        var protocol = _newProtocol();
        var buffer = new ReceiveBuffer(BufferSize);
        _pad.LinkOpened(protocol);
        _lastCode = null;
        _log.LogInformation("{Corner} opened {Link}", _pad.Corner, _address.Name);
        if (!protocol.Greeting.IsEmpty)
            link.Write(protocol.Greeting.Span);
        while (true)
        {
            var read = buffer.Fill(link);
            var arrival = _clock.NowNs;
            _pad.Received(read);
            buffer.Drain(bytes => protocol.Decode(bytes, arrival, _pad));
            _backoff.Reset();
        }
    }

    private ILink Open()
    {
        var link = _factory.Open(_address);
        lock (_gate)
        {
            _link = link;
            // Stopped meanwhile: nobody else would end this link.
            if (_stop.IsSet)
                link.Dispose();
        }

        return link;
    }
}
