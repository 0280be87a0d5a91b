using System.Text;
using ScaleLink.Daemon.Configuration;

namespace Daemon.Tests.Configuration;

/// <summary>Bay files that are none: each is answered with a sentence, in time.</summary>
public sealed class BadBayFileTests : IDisposable
{
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(5);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData("[", "")]
    [InlineData("[", "]")]
    [InlineData("{ a = ", "")]
    [InlineData("{ a = ", "}")]
    [InlineData("[{ a = ", "}]")]
    public async Task Lists_and_tables_deep_within_each_other_get_one_sentence(string open, string close)
    {
        var text = "bay = \"unit6\"\nx = " + Repeat(open, 50_000) + Repeat(close, 50_000);
        Assert.Equal(ConfigurationCodes.FileBeyondBounds, Assert.Single(await Mistakes(text)).Code);
    }

    [Fact]
    public async Task Twenty_thousand_pads_get_one_sentence()
    {
        var mistake = Assert.Single(await Mistakes("bay = \"unit6\"\n" + Repeat("[[pads]]\ncorner = \"LF\"\nlink = \"tcp://h:1\"\n", 20_000)));
        Assert.Equal(ConfigurationCodes.FileBeyondBounds, mistake.Code);
        Assert.Contains("20000", mistake.Message.ToString());
    }

    [Theory]
    [InlineData("[[pads.registers]]\naddress = 1\n")]
    [InlineData("[car]\n")]
    public async Task So_do_other_blocks_without_end(string block) => await Mistakes(Repeat(block, 20_000));

    [Fact]
    public async Task Keys_without_end_get_one_sentence() => Assert.Equal(
        ConfigurationCodes.FileBeyondBounds, Assert.Single(await Mistakes(string.Concat(Enumerable.Range(0, 40_000).Select(k => $"k{k} = 1\n")))).Code);

    [Fact]
    public async Task A_key_of_many_parts_is_answered_too() => await Mistakes(string.Join('.', Enumerable.Repeat("a", 100_000)) + " = 1");

    [Theory]
    [InlineData(1_000_000, false)]
    [InlineData(1_000_001, true)]
    public void A_file_beyond_a_megabyte_is_not_read(int bytes, bool isRefused)
    {
        var path = Path.Combine(_folder.FullName, "bay.toml");
        File.WriteAllText(path, "#".PadRight(bytes));
        Assert.Equal(isRefused, BayFile.Load(path).Mistakes.Any(m => m.Code == ConfigurationCodes.FileBeyondBounds));
    }

    [Fact]
    public void A_file_without_end_is_not_read_to_its_end()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no /dev/zero.");
        Assert.Equal(ConfigurationCodes.FileBeyondBounds, Assert.Single(BayFile.Load("/dev/zero").Mistakes).Code);
    }

    [Theory]
    [InlineData("serial_number = \"SLP\\u001b[2J\"")]
    [InlineData("serial_number = \"SLP\\u009b2J\"")]
    [InlineData("serial_number = \"SLP\u202e1001\"")]
    [InlineData("serial_number = 'SLP\u2066'")]
    [InlineData("serial_number = 'SLP\u200e'")]
    public async Task Signs_that_do_not_show_are_refused_in_names_and_never_repeated(string line)
    {
        var mistakes = await Mistakes($"bay = \"unit6\"\n[[pads]]\ncorner = \"LF\"\nlink = \"tcp://h:1\"\n{line}\n");
        Assert.Contains(mistakes, m => m.Code == ConfigurationCodes.TextUnprintable && m.Line == 5);
    }

    [Fact]
    public async Task What_is_told_of_a_file_shows_whatever_stands_in_it()
    {
        var told = (await Mistakes("bay = \"\\u001b]0;title\\u0007\"\n\"\\u001b[31mred\\u202e\" = 1\n[\"\\u001b[7m\"]\n")).Select(m => m.Describe("bay\u001b.toml")).ToList();
        Assert.NotEmpty(told);
        Assert.All(told, line => Assert.DoesNotContain(line, sign => char.IsControl(sign) || sign == '\u202e'));
    }

    [Fact]
    public void A_pattern_may_name_any_sign()
    {
        var file = BayFile.Parse("""
            bay = "unit6"
            [[pads]]
            corner = "LF"
            link = "tcp://h:1"
            protocol = "text-lines"
            capacity_kg = 1000
            kg_per_count = 0.01
            pattern = "\u0002(?<load1>[0-9]+)"
            line_end = "\u0003"
            """, "bay.toml");
        Assert.DoesNotContain(file.Mistakes, m => m.Code == ConfigurationCodes.TextUnprintable);
    }

    [Theory]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.UserWrite, false)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.GroupRead, false)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.OtherRead, true)]
    [InlineData(UnixFileMode.UserRead | UnixFileMode.OtherWrite, true)]
    public void A_password_file_that_is_open_to_everybody_is_refused(UnixFileMode mode, bool isRefused)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no such modes.");
        var (bay, password) = (Path.Combine(_folder.FullName, "bay.toml"), Path.Combine(_folder.FullName, "secret"));
        File.WriteAllText(bay, "bay = \"unit6\"\n[mqtt]\nbroker = \"external\"\nuser = \"bay\"\npassword_file = \"secret\"\n[[pads]]\ncorner = \"LF\"\nlink = \"tcp://h:1\"\n");
        File.WriteAllText(password, "word");
        File.SetUnixFileMode(password, mode);
        var file = BayFile.Load(bay);
        Assert.Equal(isRefused, file.Mistakes.Any(m => m.Code == ConfigurationCodes.PasswordFileOpen && m.Remedy.ToString().Contains($"chmod o-rwx '{password}'") && m.Line == 5));
        // Meant from where the bay file lies, not from where the daemon was started.
        Assert.Equal(password, file.Configuration!.Mqtt.PasswordFile);
    }

    private static async Task<IReadOnlyList<Diagnostic>> Mistakes(string text) =>
        await Task.Run(() => BayFile.Parse(text, "bay.toml").Mistakes).WaitAsync(Soon);

    private static string Repeat(string text, int times) => new StringBuilder(text.Length * times).Insert(0, text, times).ToString();
}
