using ScaleLink.Client.Connection;

namespace ScaleLink.Client.Demo;

/// <summary>Where the programs of the demo are, and what runs them.</summary>
internal static class Programs
{
    public static string Daemon => Find("scalelinkd", "ScaleLink.Daemon");

    public static string Simulator => Find("car-on-pads", "CarOnPads");

    /// <summary>The dotnet host: the one that runs this program, or the one that started it.</summary>
    public static string Host
    {
        get
        {
            var own = Environment.ProcessPath;
            return own is not null && Path.GetFileNameWithoutExtension(own) == "dotnet"
                ? own
                : Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        }
    }

    // Beside this program when everything was installed into one folder; otherwise as the build lays it out, one folder a project.
    private static string Find(string program, string project)
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        var built = here.Parent?.Parent is { } all ? Path.Combine(all.FullName, project, here.Name, $"{program}.dll") : "";
        var beside = Path.Combine(here.FullName, $"{program}.dll");
        return new[] { beside, built }.FirstOrDefault(File.Exists) ?? throw new ClientException(
            new Diagnostic(DemoCodes.ProgramMissing, $"{program}.dll is neither in {here.FullName} nor at {built}.", "Build the whole checkout, or install the program beside this one."));
    }
}
