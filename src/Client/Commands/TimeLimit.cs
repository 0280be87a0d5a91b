using System.CommandLine;

namespace ScaleLink.Client.Commands;

/// <summary>The option that ends a command after some seconds.</summary>
internal static class TimeLimit
{
    public static Option<double?> Option(string description)
    {
        var option = new Option<double?>("--seconds") { Description = description, HelpName = "N" };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && result.GetValueOrDefault<double?>() is not (> 0 and <= 1e6))
                result.AddError("--seconds: give a number of seconds above 0.");
        });
        return option;
    }

    /// <summary>A source that ends with <paramref name="stop"/> or after the seconds.</summary>
    public static CancellationTokenSource Start(double? seconds, TimeProvider time, CancellationToken stop)
    {
        var source = seconds is { } s ? new CancellationTokenSource(TimeSpan.FromSeconds(s), time) : new CancellationTokenSource();
        stop.Register(source.Cancel);
        return source;
    }
}
