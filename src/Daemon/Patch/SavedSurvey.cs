using ScaleLink.Weighing.Patch;
using ScaleLink.Weighing.Patch.Files;

namespace ScaleLink.Daemon.Patch;

/// <summary>The survey in force.</summary>
/// <param name="Input">As measured.</param>
/// <param name="Survey">Adjusted.</param>
/// <param name="At">When it was saved, UTC.</param>
/// <param name="Who">Who saved it.</param>
public sealed record SavedSurvey(SurveyInput Input, PatchSurvey Survey, DateTimeOffset At, string Who);
