namespace ScaleLink.Measure.Diagnostics;

/// <summary>Every code there is, by area.</summary>
public static class Catalogue
{
    /// <summary>In the order of the documentation.</summary>
    public static IReadOnlyList<CodeArea> Areas { get; } =
    [
        ConfigurationCodes.Area,
        LinkCodes.Area,
        PadCodes.Area,
        PadStateCodes.Area,
        CalibrationCodes.Area,
        LedgerCodes.Area,
        ServiceCodes.Area,
        ConnectionCodes.Area,
        DemoCodes.Area,
        ClientCodes.Area,
        DoctorCodes.Area,
        ProbeCodes.Area,
        SetupCodes.Area,
        CarCodes.Area,
        SheetCodes.Area,
        PatchCodes.Area,
        InclinometerCodes.Area,
        PlanCodes.Area,
        SessionCodes.Area,
        SiteCheckCodes.Area,
    ];

    /// <summary>Every code.</summary>
    public static IEnumerable<Code> All => Areas.SelectMany(a => a.Codes);
}
