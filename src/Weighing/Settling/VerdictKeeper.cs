namespace ScaleLink.Weighing.Settling;

/// <summary>
/// Turns claims into a verdict that the eye can follow. Bad news passes at once. A claim must have stood for 0.3 s before it is believed, and after
/// a disturbance half a second passes before anything better is said, and settled must have been so for as long.
/// </summary>
sealed class VerdictKeeper
{
    const int Confirm = 4;
    const int Trust = 6;
    const int DisturbedAtLeast = 10;
    const int DisturbedWithoutClaim = 40;

    int _age;
    int _claims;
    int _silences;

    public SettlingVerdict Verdict { get; private set; } = SettlingVerdict.Moving;

    /// <param name="claimed">An uncertainty could be stated.</param>
    /// <param name="rule">The settled rule.</param>
    /// <param name="touched">The newest block does not belong to the motion seen so far.</param>
    public void Add(bool claimed, SettledRule rule, bool touched)
    {
        _claims = claimed ? _claims + 1 : 0;
        _silences = claimed ? 0 : _silences + 1;
        var next = Verdict switch
        {
            SettlingVerdict.Settled => touched || !rule.Holds ? SettlingVerdict.Disturbed : SettlingVerdict.Settled,
            SettlingVerdict.Disturbed => AfterDisturbance(rule, touched),
            SettlingVerdict.Settling => touched || _silences >= Confirm ? SettlingVerdict.Moving
                : rule.Holds && _age >= Confirm ? SettlingVerdict.Settled : SettlingVerdict.Settling,
            _ => _claims >= Trust && _age >= Confirm ? SettlingVerdict.Settling : SettlingVerdict.Moving,
        };
        _age = next == Verdict ? _age + 1 : 0;
        Verdict = next;
    }

    public void Clear() => (Verdict, _age, _claims, _silences) = (SettlingVerdict.Moving, 0, 0, 0);

    SettlingVerdict AfterDisturbance(SettledRule rule, bool touched)
    {
        if (touched || _age < DisturbedAtLeast) return SettlingVerdict.Disturbed;
        if (rule.Holds && rule.Age >= DisturbedAtLeast) return SettlingVerdict.Settled;
        if (_claims >= DisturbedAtLeast) return SettlingVerdict.Settling;
        return _silences >= DisturbedWithoutClaim ? SettlingVerdict.Moving : SettlingVerdict.Disturbed;
    }
}
