namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>One possible cause of a step that disagrees.</summary>
/// <param name="Cause">Which.</param>
/// <param name="Explains">True when the loads were recomputed under this cause and then agree with the reading.</param>
/// <param name="Words">For the crew: what to look at.</param>
sealed record LikelyCause(StepCause Cause, bool Explains, Sentence Words);
