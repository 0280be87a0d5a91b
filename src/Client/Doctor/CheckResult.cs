using ScaleLink.Measure.Sentences;

namespace ScaleLink.Client.Doctor;

/// <summary>How a check ended.</summary>
internal enum Outcome
{
    /// <summary>As it should be.</summary>
    Pass,
    /// <summary>To be put right.</summary>
    Fail,
    /// <summary>It could not be made; the message says why.</summary>
    LeftOut,
}

/// <summary>What one check has found out about one port or pad.</summary>
/// <param name="Check">The check's name, the same in every version.</param>
/// <param name="Subject">Port, pad, or program.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="Message">What was found.</param>
/// <param name="Wrong">With a failure: what is wrong, and what to do next.</param>
internal sealed record CheckResult(string Check, string Subject, Outcome Outcome, Sentence Message, Diagnostic? Wrong = null)
{
    public static CheckResult Pass(string check, string subject, Sentence message) => new(check, subject, Outcome.Pass, message);

    public static CheckResult Fail(string check, string subject, Code code, Sentence message, Sentence remedy) => Fail(check, subject, new Diagnostic(code, message, remedy));

    public static CheckResult Fail(string check, string subject, Diagnostic wrong) => new(check, subject, Outcome.Fail, wrong.Message, wrong);

    public static CheckResult LeftOut(string check, string subject, Sentence why) => new(check, subject, Outcome.LeftOut, why);
}
