namespace ScaleLink.Measure.Distributions;

/// <summary>Finds where a function crosses zero by halving: slow, and cannot miss.</summary>
internal static class Bisection
{
    /// <summary>The crossing of a function that rises between two arguments, to the last digit.</summary>
    public static double Rising(Func<double, double> function, double low, double high)
    {
        while (true)
        {
            var middle = low + (high - low) / 2;
            if (middle <= low || middle >= high)
                return middle;
            if (function(middle) < 0)
                low = middle;
            else
                high = middle;
        }
    }
}
