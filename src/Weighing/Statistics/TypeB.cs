namespace ScaleLink.Weighing.Statistics;

/// <summary>Standard uncertainties of what is known only by its limits. Source: JCGM 100:2008 (GUM) 4.3 and F.2.2.1.</summary>
static class TypeB
{
    /// <summary>Anywhere within ± <paramref name="halfWidth"/>, equally likely.</summary>
    public static double Rectangular(double halfWidth) => Math.Abs(halfWidth) / Math.Sqrt(3);

    /// <summary>Swinging between ± <paramref name="halfWidth"/> like a sine: most often near the ends.</summary>
    public static double Arcsine(double halfWidth) => Math.Abs(halfWidth) / Math.Sqrt(2);

    /// <summary>Rounded to whole steps of <paramref name="step"/>.</summary>
    public static double Rounding(double step) => Rectangular(0.5 * step);
}
