using MathNet.Numerics.Distributions;

namespace ScaleLink.Weighing.WorkSessions.Learning;

/// <summary>Says whether a step agrees with its prediction, and looks for causes when it does not.</summary>
static class StepJudge
{
    // One false alarm in a thousand steps: rare enough that the crew still looks when one comes.
    const double FalseAlarm = 0.001;
    static readonly double WidestDeviation = Normal.InvCDF(0, 1, 1 - FalseAlarm / 2);
    static readonly double LargestMisfit = ChiSquared.InvCDF(3, 1 - FalseAlarm);

    public static StepCheck Check(StepLearner known, StepRecord step)
    {
        var observed = step.After.CrossWeightPercent;
        var predicted = known.NextReading(step.Turns, observed.StandardUncertainty);
        var deviation = (observed.Estimate - predicted.Estimate) / predicted.Uncertainty;
        var sums = SumMisfit(known, step);
        if (Math.Abs(deviation) <= WidestDeviation && sums <= LargestMisfit)
            return new(predicted, observed, null, []);
        var causes = CauseSearch.Of(known, step, sumsDisagree: sums > LargestMisfit);
        return new(predicted, observed, new(SessionCodes.StepDisagrees, Words(predicted, observed, sums > LargestMisfit),
            string.Join(" ", causes.Take(3).Select(c => c.Words))), causes);
    }

    /// <summary>True when cross weight would lie within the prediction if the step had changed the loads so.</summary>
    public static bool WouldAgree(StepLearner known, StepRecord step, Corners change)
    {
        var predicted = known.NextReading(step.Turns, step.After.CrossWeightPercent.StandardUncertainty);
        var shifted = known.CrossWeightPercent.Estimate + 100 / known.Effects.Statics.TotalKg * Shares.CrossWeight.Dot(change);
        // A likely cause has to bring the reading well inside, not just to the edge of an alarm.
        return Math.Abs(step.After.CrossWeightPercent.Estimate - shifted) <= 2 * predicted.Uncertainty;
    }

    /// <summary>How badly all four loads fit if the step had changed them so: a sum of squares, each over its variance, of which a fit leaves about four.</summary>
    public static double Misfit(StepLearner known, StepRecord step, in Corners change)
    {
        var predicted = known.NextReading(step.Turns, step.After.CrossWeightPercent.StandardUncertainty);
        var shifted = known.CrossWeightPercent.Estimate + 100 / known.Effects.Statics.TotalKg * Shares.CrossWeight.Dot(change);
        var deviation = (step.After.CrossWeightPercent.Estimate - shifted) / predicted.Uncertainty;
        return deviation * deviation + SumMisfit(known, step, change);
    }

    static double SumMisfit(StepLearner known, StepRecord step) => SumMisfit(known, step, known.Effects.Forecast(step.Turns).Loads);

    // Turns move hardly anything but warp: total, pitch and roll moment must come out as before.
    static double SumMisfit(StepLearner known, StepRecord step, in Corners change)
    {
        var forecast = known.Effects.Forecast(step.Turns);
        var surprise = step.After.Loads - known.Last.Loads - change;
        var spread = known.Last.Covariance + step.After.Covariance + forecast.LoadCovariance;
        var contacts = known.Effects.Statics.Contacts;
        double misfit = 0;
        foreach (var pattern in (ReadOnlySpan<Corners>)[Corners.Same(1), contacts.SlopeAlongX, contacts.SlopeAlongY])
        {
            var size = pattern.Dot(surprise);
            misfit += size * size / (spread.VarianceOf(pattern) + pattern.Dot(pattern) * Repositioning * Repositioning);
        }
        return misfit;
    }

    // A settled car stands a few mm elsewhere on its pads each time, and reads a little differently there, kg a wheel.
    const double Repositioning = 0.2;

    static string Words(Value predicted, Value observed, bool sumsDisagree) =>
        $"The step should have brought cross weight to {predicted.Estimate:F2} % within {predicted.HalfWidth():F2}; it reads {observed.Estimate:F2} %."
        + (sumsDisagree ? " Axle or side sums moved too, which turns cannot do." : "");
}
