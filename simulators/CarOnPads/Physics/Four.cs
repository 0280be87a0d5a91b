using System.Runtime.CompilerServices;

namespace CarOnPads.Physics;

/// <summary>One number a wheel. A value: assigning it copies it, so a whole car copies with its state.</summary>
[InlineArray(4)]
struct Four : IEquatable<Four>
{
    double _first;

    /// <summary>Four numbers in the order of <see cref="Wheel"/>.</summary>
    public static Four Of(double lf, double rf, double lr, double rr)
    {
        var four = new Four();
        four[0] = lf;
        four[1] = rf;
        four[2] = lr;
        four[3] = rr;
        return four;
    }

    /// <summary>The same number at every wheel.</summary>
    public static Four Same(double value) => Of(value, value, value, value);

    /// <summary>The number at one wheel.</summary>
    public double this[Wheel wheel]
    {
        readonly get => this[(int)wheel];
        set => this[(int)wheel] = value;
    }

    /// <summary>Sum over the wheels.</summary>
    public readonly double Sum => this[0] + this[1] + this[2] + this[3];

    /// <summary>Every number times the factor.</summary>
    public readonly Four Times(double factor) =>
        Of(this[0] * factor, this[1] * factor, this[2] * factor, this[3] * factor);

    /// <summary>Wheel by wheel.</summary>
    public readonly Four Plus(in Four other) =>
        Of(this[0] + other[0], this[1] + other[1], this[2] + other[2], this[3] + other[3]);

    /// <summary>A plain array of the four.</summary>
    public readonly double[] ToArray() => [this[0], this[1], this[2], this[3]];

    /// <summary>Bit for bit the same four numbers.</summary>
    public readonly bool Equals(Four other) => ((ReadOnlySpan<double>)this).SequenceEqual(other);

    /// <summary>Bit for bit the same.</summary>
    public static bool operator ==(in Four a, in Four b) => a.Equals(b);

    /// <summary>Not bit for bit the same.</summary>
    public static bool operator !=(in Four a, in Four b) => !a.Equals(b);

    /// <inheritdoc/>
    public override readonly bool Equals(object? obj) => obj is Four other && Equals(other);

    /// <inheritdoc/>
    public override readonly int GetHashCode() => HashCode.Combine(this[0], this[1], this[2], this[3]);

    /// <summary>The largest absolute value.</summary>
    public readonly double Peak =>
        Math.Max(Math.Max(Math.Abs(this[0]), Math.Abs(this[1])), Math.Max(Math.Abs(this[2]), Math.Abs(this[3])));
}
