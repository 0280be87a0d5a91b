namespace ScaleLink.Weighing.Levelling;

/// <summary>Shims of one thickness at hand.</summary>
sealed record ShimSet(double ThicknessMm, int Pieces);
