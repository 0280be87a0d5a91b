using ScaleLink.Weighing.Settling;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>How the estimator took a hand on a settled car.</summary>
/// <param name="WasSettled">The car was called settled just before the hand came.</param>
/// <param name="RetractedAfter">Seconds from the first block in which the hand was felt until "settled" was taken back.</param>
/// <param name="Covered">Pads and blocks while the hand leans whose stated interval holds the quasi-static load.</param>
/// <param name="Stated">Pads and blocks while the hand leans for which an interval was stated.</param>
sealed record HandOutcome(bool WasSettled, double RetractedAfter, int Covered, int Stated)
{
    public static HandOutcome Of(RockingRecord record)
    {
        var trial = new SettlingTrial(record);
        var touch = 1;
        while (RockingRecord.Time(touch) < 0) touch++;
        var lost = touch;
        while (lost < trial.Readings.Length - 1 && trial.Readings[lost].Verdict == SettlingVerdict.Settled) lost++;
        int covered = 0, stated = 0;
        for (var k = touch; RockingRecord.Time(k) < LeaningHand.LetsGo; k++)
        {
            var (c, s) = trial.Covered(k);
            (covered, stated) = (covered + c, stated + s);
        }
        return new(
            trial.Readings[touch - 1].Verdict == SettlingVerdict.Settled,
            RockingRecord.Time(lost),
            covered,
            stated);
    }
}
