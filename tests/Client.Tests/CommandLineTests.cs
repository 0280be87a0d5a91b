using System.Net;
using System.Net.Sockets;
using Client.Tests.Terminal;
using ScaleLink.Client;

namespace Client.Tests;

public class CommandLineTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("watch", "--rate", "1000")]
    [InlineData("watch", "--seconds", "-1")]
    [InlineData("zero", "XX")]
    [InlineData("demo", "--page-port", "70000")]
    [InlineData("nonsense")]
    public async Task A_wrong_argument_ends_with_2_and_a_word_about_it(params string[] arguments)
    {
        var error = new StringWriter();
        Assert.Equal(2, await CommandLine.Run(arguments, Shells.Redirected(error: error), Cancel));
        Assert.NotEmpty(error.ToString());
    }

    [Theory]
    [InlineData("pads")]
    [InlineData("zero")]
    public async Task A_daemon_that_is_away_is_told_with_code_and_remedy(string command)
    {
        var error = new StringWriter();
        Assert.Equal(2, await CommandLine.Run([command, "--daemon", $"http://127.0.0.1:{FreePort()}"], Shells.Redirected(error: error), Cancel));
        Assert.Matches(@"^scalelink: No daemon answers at http://127\.0\.0\.1:.* \(SL-420\)", error.ToString());
        Assert.Contains("Start the daemon", error.ToString());
    }

    [Fact]
    public async Task With_json_even_a_trouble_is_json()
    {
        var output = new StringWriter();
        Assert.Equal(2, await CommandLine.Run(["pads", "--json", "--daemon", "ftp://nowhere"], Shells.Redirected(output), Cancel));
        Assert.StartsWith("""{"trouble":{"code":"SL-421",""", output.ToString());
    }

    [Fact]
    public async Task Watch_waits_for_a_daemon_that_is_away_and_says_so()
    {
        var output = new HeardWriter("ABSENT No daemon answers");
        using var end = CancellationTokenSource.CreateLinkedTokenSource(Cancel);
        var watch = CommandLine.Run(["watch", "--daemon", $"http://127.0.0.1:{FreePort()}"], Shells.Redirected(output), end.Token);
        Assert.Same(output.Heard, await Task.WhenAny(watch, output.Heard).WaitAsync(TimeSpan.FromSeconds(60), Cancel));
        await end.CancelAsync();
        Assert.Equal(0, await watch);
    }

    [Theory]
    [InlineData("work-session", "export", "20260502-091500")]
    [InlineData("calibrations", "export", "17")]
    [InlineData("calibrations", "pad-interchange", "export", "3")]
    public async Task Every_export_takes_the_same_options(params string[] export)
    {
        foreach (var format in (string[])["csv", "json", "html"])
            Assert.Contains("SL-420", await Refused([.. export, "--format", format, "--out", "-", "--daemon", $"http://127.0.0.1:{FreePort()}"]));
        Assert.Contains("'csv'", await Refused([.. export, "--format", "xml"]));

        static async Task<string> Refused(string[] arguments)
        {
            var error = new StringWriter();
            Assert.Equal(2, await CommandLine.Run(arguments, Shells.Redirected(error: error), Cancel));
            return error.ToString();
        }
    }

    [Fact]
    public async Task Help_names_every_command()
    {
        var output = new StringWriter();
        Assert.Equal(0, await CommandLine.Run(["--help"], Shells.Redirected(output), Cancel));
        Assert.All("watch pads zero demo --daemon --json".Split(' '), word => Assert.Contains(word, output.ToString()));
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>Tells when a line with a word in it has been written.</summary>
    private sealed class HeardWriter(string word) : StringWriter
    {
        private readonly TaskCompletionSource _heard = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task Heard => _heard.Task;

        public override void WriteLine(string? value)
        {
            base.WriteLine(value);
            if (value?.Contains(word, StringComparison.Ordinal) == true)
                _heard.TrySetResult();
        }
    }
}
