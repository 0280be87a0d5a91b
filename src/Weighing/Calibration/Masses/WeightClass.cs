namespace ScaleLink.Weighing.Calibration.Masses;

/// <summary>Accuracy classes of weights, finest first. Source: OIML R 111-1:2004.</summary>
enum WeightClass
{
    /// <summary>Class E2.</summary>
    E2,
    /// <summary>Class F1.</summary>
    F1,
    /// <summary>Class F2.</summary>
    F2,
    /// <summary>Class M1.</summary>
    M1,
    /// <summary>Class M2.</summary>
    M2,
    /// <summary>Class M3.</summary>
    M3,
}
