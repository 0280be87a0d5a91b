using System.Text.Json.Serialization;

namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>One possible cause of a step that disagrees.</summary>
/// <param name="Cause">Which.</param>
/// <param name="Explains">True when the loads were recomputed under this cause and then agree with the reading.</param>
/// <param name="Words">For the crew: what to look at.</param>
/// <param name="Turns">What was really turned if this is it, up positive; null: turns are not the matter.</param>
sealed record LikelyCause(StepCause Cause, bool Explains, Sentence Words, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Corners? Turns = null);
