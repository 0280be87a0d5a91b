using static System.Buffers.Binary.BinaryPrimitives;

namespace ScaleLink.Protocol.PadFrames;

/// <summary>One reading of every cell of a pad, with tilt and temperature where the pad has them. Allocates nothing.</summary>
readonly struct SampleFrame
{
    const int HeadLength = 19;
    const int CountLength = 4;
    const double TiltSteps = 1000;
    const double TemperatureSteps = 100;

    readonly short _pitch, _roll, _temperature;
    readonly byte _cells;
    readonly FrameCounts _counts;

    /// <summary>A sample as the wire can carry it: angles are rounded to 0.001 degree, the temperature to 0.01 °C.</summary>
    /// <param name="sequence">Rises by one each sample and wraps.</param>
    /// <param name="deviceMicroseconds">The pad's clock, microseconds; wraps after 2^32 (71.6 min).</param>
    /// <param name="status">What the pad says of itself; undefined bits must be clear.</param>
    /// <param name="pitchDegrees">-32.767 to 32.767 degrees, or null: absent.</param>
    /// <param name="rollDegrees">-32.767 to 32.767 degrees, or null: absent.</param>
    /// <param name="temperatureCelsius">-327.67 to 327.67 °C, or null: absent.</param>
    /// <param name="counts">Raw counts, one a cell, 1 to 8 of them.</param>
    /// <exception cref="ArgumentException">The number of cells or the status is outside the format.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A quantity is outside its range.</exception>
    public SampleFrame(
        uint sequence, uint deviceMicroseconds, PadStatus status,
        double? pitchDegrees, double? rollDegrees, double? temperatureCelsius, ReadOnlySpan<int> counts)
    {
        if (counts.Length is < 1 or > PadBody.MaxCells)
            throw new ArgumentException($"A pad has 1 to {PadBody.MaxCells} cells, not {counts.Length}.", nameof(counts));
        if ((status & ~PadStatus.Defined) != 0)
            throw new ArgumentException("Bits 14 and 15 of the status are reserved and zero.", nameof(status));
        Sequence = sequence;
        DeviceMicroseconds = deviceMicroseconds;
        Status = status;
        _pitch = WireDecimal.FromDouble(pitchDegrees, TiltSteps, nameof(pitchDegrees));
        _roll = WireDecimal.FromDouble(rollDegrees, TiltSteps, nameof(rollDegrees));
        _temperature = WireDecimal.FromDouble(temperatureCelsius, TemperatureSteps, nameof(temperatureCelsius));
        _cells = (byte)counts.Length;
        counts.CopyTo(_counts);
    }

    SampleFrame(ReadOnlySpan<byte> body)
    {
        Sequence = ReadUInt32LittleEndian(body[2..]);
        DeviceMicroseconds = ReadUInt32LittleEndian(body[6..]);
        Status = (PadStatus)ReadUInt16LittleEndian(body[10..]) & PadStatus.Defined;
        _pitch = ReadInt16LittleEndian(body[12..]);
        _roll = ReadInt16LittleEndian(body[14..]);
        _temperature = ReadInt16LittleEndian(body[16..]);
        _cells = body[18];
        for (var cell = 0; cell < _cells; cell++)
            _counts[cell] = ReadInt32LittleEndian(body[(HeadLength + CountLength * cell)..]);
    }

    /// <summary>Rises by one each sample and wraps.</summary>
    public uint Sequence { get; }

    /// <summary>The pad's clock at the sample, microseconds; wraps after 2^32 (71.6 min).</summary>
    public uint DeviceMicroseconds { get; }

    /// <summary>What the pad says of itself. Undefined bits are cleared.</summary>
    public PadStatus Status { get; }

    /// <summary>Pitch in degrees, right-handed about the axis to the left (ISO 8855); null when absent.</summary>
    public double? PitchDegrees => WireDecimal.ToDouble(_pitch, TiltSteps);

    /// <summary>Roll in degrees, right-handed about the axis forward (ISO 8855); null when absent.</summary>
    public double? RollDegrees => WireDecimal.ToDouble(_roll, TiltSteps);

    /// <summary>Temperature in °C; null when absent.</summary>
    public double? TemperatureCelsius => WireDecimal.ToDouble(_temperature, TemperatureSteps);

    /// <summary>How many cells the sample carries, 1 to 8.</summary>
    public int Cells => _cells;

    /// <summary>The raw count of one cell, from 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sample has no such cell.</exception>
    public int this[int cell]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(cell);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cell, Cells);
            return _counts[cell];
        }
    }

    /// <summary>Reads a sample from a whole body. False when it is not one.</summary>
    public static bool TryParse(ReadOnlySpan<byte> body, out SampleFrame sample)
    {
        var good = HasShape(body);
        sample = good ? new SampleFrame(body) : default;
        return good;
    }

    internal static bool HasShape(ReadOnlySpan<byte> body) =>
        PadBody.StartsAs(FrameKind.Sample, body)
        && body.Length > HeadLength
        && body[18] is >= 1 and <= PadBody.MaxCells
        && body.Length == HeadLength + CountLength * body[18];

    internal int WriteBody(Span<byte> body)
    {
        if (_cells == 0)
            throw new ArgumentException("A sample without cells cannot be sent.");
        var length = HeadLength + CountLength * _cells;
        PadBody.Start(FrameKind.Sample, length, body);
        WriteUInt32LittleEndian(body[2..], Sequence);
        WriteUInt32LittleEndian(body[6..], DeviceMicroseconds);
        WriteUInt16LittleEndian(body[10..], (ushort)Status);
        WriteInt16LittleEndian(body[12..], _pitch);
        WriteInt16LittleEndian(body[14..], _roll);
        WriteInt16LittleEndian(body[16..], _temperature);
        body[18] = _cells;
        for (var cell = 0; cell < _cells; cell++)
            WriteInt32LittleEndian(body[(HeadLength + CountLength * cell)..], _counts[cell]);
        return length;
    }
}
