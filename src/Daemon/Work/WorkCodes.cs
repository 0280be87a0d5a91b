namespace ScaleLink.Daemon.Work;

/// <summary>Codes of work sessions. A code never changes its meaning and is never used again.</summary>
internal static class WorkCodes
{
    public const string NoSession = "SL-560";
    public const string SessionOpen = "SL-561";
    public const string NotInThisState = "SL-562";
    public const string NotReady = "SL-563";
    public const string NoSuchCheck = "SL-564";
    public const string NotFinished = "SL-566";
    public const string NoSuchSession = "SL-567";
    public const string SameRest = "SL-568";
    public const string StepInput = "SL-569";
    public const string BarsPreloaded = "SL-570";
    public const string PadsUnproved = "SL-571";
    public const string ZeroMissing = "SL-572";
    public const string PatchNotLevel = "SL-573";
    public const string HardToCompare = "SL-574";
    public const string HeightsWanted = "SL-575";
    public const string ChangedUnnamed = "SL-576";
    public const string LeanUntested = "SL-577";
}
