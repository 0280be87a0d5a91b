using MathNet.Numerics.Distributions;

namespace Daemon.Tests.Workflows.Calibration.Coverage;

/// <summary>
/// Exact two-sided interval of a share that was counted. Source: C. Clopper and E. Pearson, Biometrika 26 (1934) 404-413; by quantiles of the
/// beta distribution.
/// </summary>
internal static class ClopperPearson
{
    public static (double Low, double High) Of(int held, int of, double probability = 0.95)
    {
        var tail = (1 - probability) / 2;
        return (held == 0 ? 0 : Beta.InvCDF(held, of - held + 1, tail), held == of ? 1 : Beta.InvCDF(held + 1, of - held, 1 - tail));
    }
}
