namespace ScaleLink.Client.Doctor;

/// <summary>How a check ended.</summary>
internal enum Outcome
{
    /// <summary>As it should be.</summary>
    Pass,
    /// <summary>To be mended.</summary>
    Fail,
    /// <summary>It could not be made; the message says why.</summary>
    LeftOut,
}

/// <summary>What one check has found out about one port or pad.</summary>
/// <param name="Check">The check's name, the same in every version.</param>
/// <param name="Subject">Port, pad, or program.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="Message">What was found.</param>
/// <param name="Code">With a failure: stable code.</param>
/// <param name="Mend">With a failure: what to do next.</param>
internal sealed record Finding(string Check, string Subject, Outcome Outcome, string Message, string Code = "", string Mend = "")
{
    public static Finding Pass(string check, string subject, string message) => new(check, subject, Outcome.Pass, message);

    public static Finding Fail(string check, string subject, string code, string message, string mend) => new(check, subject, Outcome.Fail, message, code, mend);

    public static Finding LeftOut(string check, string subject, string why) => new(check, subject, Outcome.LeftOut, why);
}
