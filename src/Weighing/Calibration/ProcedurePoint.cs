using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration;

/// <summary>On which way of a repetition a point was read.</summary>
enum LoadingWay
{
    /// <summary>From the empty pad to the highest load.</summary>
    Up,
    /// <summary>Back to the empty pad.</summary>
    Down,
}

/// <summary>One point of a calibration procedure.</summary>
/// <param name="Load">What stood on the pad.</param>
/// <param name="Repetition">Number of the repetition, from 1.</param>
/// <param name="Way">Up or down. The empty pad before a repetition is up, after it down.</param>
/// <param name="Counts">Trimmed counts, mean of the settled reading.</param>
sealed record ProcedurePoint(LoadStack Load, int Repetition, LoadingWay Way, double Counts);
