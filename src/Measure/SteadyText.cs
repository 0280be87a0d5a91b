namespace ScaleLink.Measure;

/// <summary>
/// One live value on a screen. Its last digit keeps its place until another place has been asked for over two seconds: a number that changes its
/// length before the eyes cannot be read. For one place on the screen and one thread.
/// </summary>
public sealed class SteadyText(TimeProvider time)
{
    /// <summary>How long another number of digits must be wanted before it is shown. Common practice, no published source.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    private Unit? _unit;
    private int _place;
    private long? _otherSince;

    /// <summary>The text to show now, never finer than the unit's live decimals.</summary>
    public ValueText Show(Value value, Unit unit, bool isSigned = false)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var wanted = ValueText.Place(value, unit, unit.LiveDecimals);
        if (_unit != unit || wanted == _place)
            (_unit, _place, _otherSince) = (unit, wanted, null);
        else if (time.GetElapsedTime(_otherSince ??= time.GetTimestamp()) >= Patience)
            (_place, _otherSince) = (wanted, null);
        return ValueText.At(value, unit, _place, isSigned);
    }

    /// <summary>The same of a value that can be away; the one that comes after it starts afresh.</summary>
    public ValueText? Show(Value? value, Unit unit, bool isSigned = false)
    {
        if (value is { } known)
            return Show(known, unit, isSigned);
        (_unit, _otherSince) = (null, null);
        return null;
    }
}
