using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Protocol.Modbus;

namespace ScaleLink.Daemon.Links.Polling;

/// <summary>
/// One slave: when it is asked next and for what, what its answers make, and what is wrong with it. A sample is made of one round of questions,
/// all answered in time, and handed on only when no other device has answered under the same address until the slave is asked again.
/// </summary>
internal sealed class BusSlave
{
    // A byte or two when the drivers of the line switch is in the nature of the line.
    private const int SwitchingNoise = 2;
    private const int RetriesOfDamaged = 2;
    private const int MissesToSilence = 3;
    private const long SilentAfterNs = 500 * Nanoseconds.PerMillisecond;
    private const long LongestRestNs = Nanoseconds.PerSecond;
    // A slave that refuses is asked no faster than this: it needs a person.
    private const long RefusedRestNs = 200 * Nanoseconds.PerMillisecond;
    private const long LongestHarmlessNs = 100 * Nanoseconds.PerMillisecond;
    private const int LateAnswersToTell = 3;
    private const int GoodAnswersToForget = 100;
    private const int DoublesToTell = 3;
    private const long ShortDistrustNs = 300 * Nanoseconds.PerMillisecond;
    private const long DistrustNs = 2 * Nanoseconds.PerSecond;

    private readonly PadConfiguration _pad;
    private readonly ModbusConfiguration _configuration;
    private readonly RegisterImage _image;
    private readonly SlaveFaults _faults;
    private readonly string _device;
    private readonly long _periodNs;
    private long _plannedNs;
    private long _lastGoodNs;
    private long _distrustUntilNs = long.MinValue;
    private long _completeAtNs;
    private bool _isComplete, _isIntroduced, _isUncertain;
    private int _block, _misses, _damagedInARow, _late, _good, _doubles;
    private long _frames, _badFrames, _skippedBytes;

    public BusSlave(PadConfiguration pad, SourceConfiguration source, IPadSource sink)
    {
        (_pad, _configuration, Sink) = (pad, source.Modbus!, sink);
        _image = new RegisterImage(_configuration.Map);
        _faults = new SlaveFaults(Address, sink);
        _device = $"{source.Link} slave {Address}";
        _periodNs = (long)(Nanoseconds.PerSecond / _configuration.PollHz);
        TimeoutNs = _configuration.ReplyTimeout.Ticks * TimeSpan.NanosecondsPerTick;
    }

    public byte Address => _configuration.Slave;

    public IPadSource Sink { get; }

    /// <summary>How long an answer may take.</summary>
    public long TimeoutNs { get; }

    /// <summary>When it is asked next.</summary>
    public long DueNs { get; private set; }

    /// <summary>In the middle of a round: the rest is asked at once, so that the numbers of a sample belong together.</summary>
    public bool IsInRound => _block > 0;

    public ModbusRequest Question => new(Address, Block.Function, Block.Address, Block.Count);

    private RegisterBlock Block => _configuration.Map.Blocks[_block];

    // With one block and a short timeout, an answer to the question before says the same, a moment older.
    private bool MustProbe => _configuration.Map.Blocks.Count > 1 || TimeoutNs > LongestHarmlessNs;

    public void Opened(long nowNs)
    {
        (DueNs, _plannedNs, _lastGoodNs) = (nowNs, nowNs, nowNs);
        Sink.LinkOpened(() => new ProtocolCounters(Interlocked.Read(ref _frames), Interlocked.Read(ref _badFrames), Interlocked.Read(ref _skippedBytes)));
    }

    public void Took(ReadOnlySpan<byte> registers, long nowNs)
    {
        Interlocked.Increment(ref _frames);
        var isBehindMiss = _misses > 0;
        var isUncertain = isBehindMiss || _damagedInARow > 0;
        if (isUncertain && MustProbe)
        {
            // It may be the answer to the question before, with another one still to come: only what is asked after that can be believed.
            Rest(nowNs, TimeoutNs / 2);
            (_isUncertain, _misses, _damagedInARow) = (true, 0, 0);
            return;
        }

        (_isUncertain, _misses, _damagedInARow) = (isUncertain, 0, 0);
        _image.Store(_block, registers);
        if (++_block < _configuration.Map.Blocks.Count)
            return;
        (_block, _isComplete, _completeAtNs, _lastGoodNs) = (0, true, nowNs, nowNs);
        // The plan keeps the mean rate; what is behind by more than one period is not caught up with.
        _plannedNs = Math.Max(_plannedNs + _periodNs, nowNs - _periodNs);
        // Another answer may still come, and must not meet an open question.
        DueNs = isBehindMiss ? Math.Max(_plannedNs, nowNs + TimeoutNs) : _plannedNs;
    }

    /// <summary>
    /// A whole round is held until then: a stranger who answers first shows only by the answer of the one who was meant. Never, when there is none.
    /// </summary>
    public long HeldUntilNs => _isComplete ? _completeAtNs + Math.Min(_periodNs, TimeoutNs) : Turn.Never;

    /// <summary>Nobody else has answered: a whole round becomes a sample.</summary>
    public void Confirm(long nowNs)
    {
        if (!_isComplete)
            return;
        _isComplete = false;
        if (nowNs < _distrustUntilNs)
            return;
        _doubles = 0;
        _faults.Answered();
        if (++_good >= GoodAnswersToForget || _late == 0)
        {
            _late = 0;
            _faults.AnsweredAloneAndInTime();
        }

        var reading = _image.Read();
        if (!_isIntroduced)
            Sink.OnIdentity(DeclaredPad.Identity(_pad, _device, reading.Cells, _configuration.PollHz));
        _isIntroduced = true;
        Sink.OnSample(DeclaredPad.Sample(reading, _completeAtNs));
    }

    /// <summary>
    /// No answer in time. It then rests: an answer that comes after all must not pass for the next one's. One that stays silent is asked
    /// ever more seldom, so that it costs the others little.
    /// </summary>
    public void Missed(long nowNs)
    {
        Abandon();
        _misses++;
        var rest = _misses < MissesToSilence ? TimeoutNs / 2 : Math.Min(LongestRestNs, TimeoutNs << Math.Min(_misses - MissesToSilence, 8));
        Rest(nowNs, rest);
        if (_misses >= MissesToSilence || nowNs - _lastGoodNs >= SilentAfterNs && _misses > 1)
            _faults.FellSilent();
    }

    /// <summary>Something came, but nothing whole.</summary>
    public void Damaged(long nowNs)
    {
        Abandon();
        Interlocked.Increment(ref _badFrames);
        DueNs = nowNs + (++_damagedInARow <= RetriesOfDamaged ? 0 : _periodNs);
    }

    public void Refused(ModbusException code, long nowNs)
    {
        Interlocked.Increment(ref _frames);
        _faults.Refused(code, Block);
        Abandon();
        Rest(nowNs, Math.Max(RefusedRestNs, _periodNs));
    }

    public void GaveOtherLength(long nowNs)
    {
        _faults.GaveOtherLength(Block);
        Abandon();
        Rest(nowNs, Math.Max(RefusedRestNs, _periodNs));
    }

    /// <summary>An answer came when none was open any more: after its time, or as a second one.</summary>
    public void AnsweredUnasked(long nowNs)
    {
        if (_isUncertain)
        {
            TakeLate(nowNs);
            return;
        }

        // Once may be a hiccup of the line. Every time is a second device.
        var isTold = ++_doubles >= DoublesToTell;
        _isComplete = false;
        _distrustUntilNs = nowNs + (isTold ? DistrustNs : ShortDistrustNs);
        if (isTold)
            _faults.AnsweredTwice();
    }

    // The one answer that was missing: nothing is open any more. After several misses nobody knows how many are still to come.
    private void TakeLate(long nowNs)
    {
        (_late, _good) = (_late + 1, 0);
        if (_late >= LateAnswersToTell)
            _faults.AnsweredLate();
        if (_misses == 1)
        {
            _misses = 0;
            Rest(nowNs, 0);
            return;
        }

        _distrustUntilNs = Math.Max(_distrustUntilNs, nowNs + TimeoutNs);
        DueNs = Math.Max(DueNs, nowNs + TimeoutNs);
    }

    /// <summary>Bytes around a good answer, or instead of one, that belonged to no frame.</summary>
    public void Skipped(long bytes, bool hasAnswered)
    {
        Interlocked.Add(ref _skippedBytes, bytes);
        if (hasAnswered && bytes > SwitchingNoise)
            Interlocked.Increment(ref _badFrames);
    }

    private void Abandon() => (_block, _isComplete, _isUncertain) = (0, false, true);

    private void Rest(long nowNs, long restNs)
    {
        DueNs = nowNs + restNs;
        _plannedNs = DueNs;
    }
}
