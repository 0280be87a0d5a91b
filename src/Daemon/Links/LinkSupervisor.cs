using System.Runtime.ExceptionServices;
using ScaleLink.Daemon.Ports;
using ScaleLink.Daemon.Runtime;

namespace ScaleLink.Daemon.Links;

/// <summary>
/// Keeps one link going, whoever hangs on it: open, run, fault, wait, open again, on a thread of its own.
/// A blocking read on its own thread costs about a third of the processor time that asynchronous reads do.
/// </summary>
internal sealed class LinkSupervisor : IDisposable
{
    private const int BufferSize = 65536;
    private static readonly TimeSpan StopWithin = TimeSpan.FromSeconds(2);

    private readonly LinkAddress _address;
    private readonly ILinkFactory _factory;
    private readonly Func<IConversation> _newConversation;
    private readonly IReadOnlyList<IPadSource> _sources;
    private readonly string _name;
    private readonly BayClock _clock;
    private readonly Action<IReadOnlyList<Diagnostic>> _tell;
    private readonly ILogger _log;
    private readonly Backoff _backoff;
    private readonly ManualResetEventSlim _stop = new();
    private readonly Lock _gate = new();
    private Thread? _thread;
    private ILink? _link;
    // Since it last spoke: what it hung up with, and what it cannot be opened for now.
    private readonly List<Diagnostic> _present = [];
    private Diagnostic? _reservation;
    private bool _hasHeard;

    /// <summary>A supervisor at rest; <see cref="Start"/> sets it going.</summary>
    /// <param name="address">Where the link leads.</param>
    /// <param name="factory">Opens it.</param>
    /// <param name="newConversation">What is spoken on each that is opened.</param>
    /// <param name="sources">Who hangs on it.</param>
    /// <param name="clock">The daemon's clock.</param>
    /// <param name="tell">Hears what is wrong since the link last spoke, each time that it changes; nothing: it speaks.</param>
    /// <param name="log">The log.</param>
    public LinkSupervisor(LinkAddress address, ILinkFactory factory, Func<IConversation> newConversation, IReadOnlyList<IPadSource> sources, BayClock clock, Action<IReadOnlyList<Diagnostic>> tell, ILogger log)
    {
        ArgumentNullException.ThrowIfNull(address);
        (_address, _factory, _newConversation, _sources, _clock, _tell, _log) = (address, factory, newConversation, sources, clock, tell, log);
        _name = string.Join(", ", sources.Select(s => s.Name));
        _backoff = new Backoff(new Random(address.Name.GetHashCode(StringComparison.Ordinal)));
    }

    /// <summary>Starts the thread.</summary>
    public void Start()
    {
        _thread = new Thread(Supervise) { IsBackground = true, Name = $"link {_name}" };
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
            _hasHeard = false;
            try
            {
                Run();
            }
            catch (LinkEndedException e)
            {
                Report(e.Diagnostic);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // A mistake of ours must not end the pad: it costs this link, and the next one starts fresh.
                _log.LogError(e, "{Sources} link broke", _name);
                Report(LinkDiagnostics.Other(_address.Name, e.Message));
            }

            _stop.Wait(_backoff.Next(isTurnedAway: !_hasHeard && _present is [.., { } last] && last.Code == LinkCodes.PortHungUp));
        }
    }

    private void Report(Diagnostic fault)
    {
        if (_stop.IsSet)
            return;
        // Who is silent already stays so while the link is opened again.
        foreach (var source in fault.Code == LinkCodes.LinkSilent ? [] : _sources)
            source.LinkFailed(fault);
        _present.RemoveAll(f => f.Code == fault.Code);
        _present.Add(fault);
        _tell([.. _present]);
    }

    private void Run()
    {
        using var link = Open();
        Reserve(link.Reservation);
        var conversation = _newConversation();
        var buffer = new byte[BufferSize];
        if (_present.Count == 0)
            _log.LogInformation("{Sources} opened {Link}", _name, _address.Name);
        using var pump = new LinkPump(link, conversation, _clock, _name);
        pump.Begin();
        try
        {
            while (true)
            {
                var read = link.Read(buffer, 0, buffer.Length);
                pump.Received(buffer.AsSpan(0, read));
                if (!_hasHeard)
                    Heard();
            }
        }
        catch (LinkEndedException) when (pump.Failure is { } cause)
        {
            ExceptionDispatchInfo.Throw(cause);
        }
    }

    // The same at every opening would bury the log.
    private void Reserve(Diagnostic? reservation)
    {
        if (reservation is not null && reservation != _reservation)
            _log.LogWarning("{Sources}: {Diagnostic}", _name, reservation);
        _reservation = reservation;
    }

    // A port that opens and says nothing has not recovered yet.
    private void Heard()
    {
        _hasHeard = true;
        _backoff.Reset();
        _present.Clear();
        _tell([]);
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
