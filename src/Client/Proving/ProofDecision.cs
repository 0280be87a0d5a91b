namespace ScaleLink.Client.Proving;

/// <summary>What a script wants done with a finished proof; with neither, somebody decides later.</summary>
/// <param name="Adopt">Put its calibration into force if there is one.</param>
/// <param name="Reject">Turn it down, with this reason.</param>
/// <param name="Note">Remark for the ledger.</param>
internal sealed record ProofDecision(bool Adopt, string? Reject, string Note);
