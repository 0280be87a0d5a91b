namespace ScaleLink.Client.Calibration;

/// <summary>What a script wants done with a finished calibration procedure; with neither, somebody decides later.</summary>
/// <param name="Adopt">Put its calibration into effect if there is one.</param>
/// <param name="Reject">Turn it down, with this reason.</param>
/// <param name="Note">Remark for the ledger.</param>
internal sealed record ProcedureDecision(bool Adopt, string? Reject, string Note);
