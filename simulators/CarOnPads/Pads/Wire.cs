using CarOnPads.Cells;
using CarOnPads.Physics;

namespace CarOnPads.Pads;

/// <summary>
/// The way from a pad's transmitter to the host's port: noise may flip bits, silence may swallow frames, and an
/// adapter with a latency timer holds bytes back until the timer strikes.
/// </summary>
sealed class Wire(long seed, string name, Imperfections imperfections, PadFaults faults)
{
    /// <summary>Latency timer of common USB-serial adapters at their factory setting, s (common practice).</summary>
    public const double LatencySeconds = 0.016;

    readonly NoiseSource _noise = new(seed, name + " wire");
    readonly double _phase = new NoiseSource(seed, name + " adapter").Uniform(0, LatencySeconds);
    readonly List<byte> _held = [];
    double _lastStrike;

    /// <summary>Takes one frame at a time in s.</summary>
    public void Send(ReadOnlySpan<byte> frame, double now)
    {
        if (now < faults.SilentUntil)
            return;
        var start = _held.Count;
        if (faults.NoiseShare > 0 && _noise.Uniform(0, 1) < faults.NoiseShare)
            AddNoise();
        _held.AddRange(faults.TruncateShare > 0 && _noise.Uniform(0, 1) < faults.TruncateShare ? frame[..(int)_noise.Uniform(1, frame.Length)] : frame);
        if (faults.BitErrorRate > 0)
            Garble(start);
    }

    /// <summary>Hands on what is due at this time.</summary>
    public void Release(double now, Action<ReadOnlySpan<byte>> host)
    {
        if (_held.Count == 0)
            return;
        if (imperfections[Imperfection.LatencyBatches])
        {
            var strike = Math.Floor((now - _phase) / LatencySeconds);
            if (strike <= _lastStrike)
                return;
            _lastStrike = strike;
        }

        host(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_held));
        _held.Clear();
    }

    void AddNoise()
    {
        for (var count = (int)_noise.Uniform(1, 12); count > 0; count--)
            _held.Add((byte)_noise.Next());
    }

    // The gap to the next wrong bit is drawn, not every bit: sound for small rates and cheap.
    void Garble(int start)
    {
        var bits = 8L * (_held.Count - start);
        for (var bit = Gap(); bit < bits; bit += 1 + Gap())
            _held[start + (int)(bit / 8)] ^= (byte)(1 << (int)(bit % 8));
    }

    long Gap() => (long)Math.Min(
        int.MaxValue, Math.Log(1 - _noise.Uniform(0, 1)) / Math.Log(1 - faults.BitErrorRate));
}
