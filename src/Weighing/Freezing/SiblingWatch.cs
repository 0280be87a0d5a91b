namespace ScaleLink.Weighing.Freezing;

/// <summary>
/// Whether one of several cells, or of several pads under one car, stands still while all the others move: what loads one loads them all. Serves where
/// noise does not reach the division (<see cref="ValueWatch"/>). Common practice, no published source; the limits are the project's own.
/// </summary>
/// <param name="count">How many there are; of fewer than three nothing is said, since a load can stand on one alone.</param>
internal sealed class SiblingWatch(int count)
{
    private const int Fewest = 3;
    private const double FarDivisions = 20;
    // Whoever turns back in his movement gives one number for a moment; whoever is filtered follows later than the others.
    private const double LongestLagSeconds = 3;

    private readonly long[] _changes = new long[count];
    private readonly long[,] _since = new long[count, count];
    private readonly double[,] _moved = new double[count, count];
    private readonly double?[] _aloneSince = new double?[count];
    private bool _hasBegun;

    /// <summary>Looks at all of them at one instant.</summary>
    /// <param name="seconds">The instant; rises.</param>
    /// <param name="values">What was seen of them, of sound converters.</param>
    /// <returns>Which of them stands still, from 0; nothing when none does, or more than one.</returns>
    public int? Look(double seconds, ReadOnlySpan<SeenValue> values)
    {
        int? still = null;
        var found = 0;
        for (var i = 0; i < values.Length; i++)
        {
            if (!_hasBegun || values[i].Changes != _changes[i])
                Begin(i, values);
            else if (AllOthersMoved(i, values) && seconds - (_aloneSince[i] ??= seconds) >= LongestLagSeconds)
                (still, found) = (i, found + 1);
        }

        _hasBegun = true;
        return values.Length >= Fewest && found == 1 ? still : null;
    }

    /// <summary>Numbers are missing: what moved before does not count.</summary>
    public void Interrupt() => _hasBegun = false;

    private void Begin(int i, ReadOnlySpan<SeenValue> values)
    {
        (_changes[i], _aloneSince[i]) = (values[i].Changes, null);
        for (var j = 0; j < values.Length; j++)
            (_since[i, j], _moved[i, j]) = (values[j].Value, 0);
    }

    private bool AllOthersMoved(int i, ReadOnlySpan<SeenValue> values)
    {
        var all = true;
        for (var j = 0; j < values.Length; j++)
        {
            if (j == i)
                continue;
            _moved[i, j] = Math.Max(_moved[i, j], Math.Abs((double)values[j].Value - _since[i, j]));
            all &= values[j].Division > 0 && _moved[i, j] >= FarDivisions * values[j].Division;
        }

        return all;
    }
}
