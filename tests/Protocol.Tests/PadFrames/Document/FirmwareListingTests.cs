using Shared;
using System.ComponentModel;
using System.Diagnostics;
using System.Text;
using ScaleLink.Protocol.PadFrames;

namespace ScaleLink.Protocol.Tests.PadFrames.Document;

/// <summary>The encoder in C that docs/pad-frames.md gives to pad builders, compiled and run.</summary>
public class FirmwareListingTests
{
    const int Count = 200;

    [Fact]
    public async Task The_listing_sends_what_the_decoder_understands()
    {
        var folder = Directory.CreateTempSubdirectory("pad-frames-");
        try
        {
            var (source, program) = (Path.Combine(folder.FullName, "pad.c"), Path.Combine(folder.FullName, "pad"));
            var samples = new List<SampleFrame>();
            Seeded.Check(Frames.Samples, Count, samples.Add);
            await File.WriteAllTextAsync(source, Program(samples), TestContext.Current.CancellationToken);

            var compiled = await StartId("cc", "-std=c99", "-Wall", "-Wextra", "-Werror", "-o", program, source);
            Assert.SkipWhen(compiled is null, "No C compiler 'cc' on the path.");
            var sent = Hex.Bytes((await StartId(program))!);

            var expected = samples.SelectMany(sample => Frames.Bytes(to => PadFrameWriter.Write(sample, to))).ToArray();
            Assert.Equal(Convert.ToHexString(expected), Convert.ToHexString(sent));
            Assert.Equal(Count, Wire.Decode(new PadFrameDecoder(), sent).Count);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    static string Program(IEnumerable<SampleFrame> samples)
    {
        var text = new StringBuilder("#include <stdio.h>\nstatic void uart_put(unsigned char v) { printf(\"%02X \", v); }\n")
            .AppendLine(Assert.Single(DocumentBlock.All("c")).Text)
            .AppendLine("int main(void)\n{");
        foreach (var sample in samples)
        {
            var body = Frames.BodyOf(Frames.Bytes(to => PadFrameWriter.Write(sample, to)));
            var words = string.Join(", ", Enumerable.Range(0, 3).Select(index => BitConverter.ToInt16(body, 12 + 2 * index)));
            var counts = string.Join(", ", Frames.Counts(sample).Select(count => $"(int32_t){(uint)count}u"));
            text.AppendLine($"    send_sample({sample.Sequence}u, {sample.DeviceMicroseconds}u, {(int)sample.Status}, {words}, "
                + $"{sample.Cells}, (const int32_t[]){{ {counts} }});");
        }
        return text.AppendLine("    return 0;\n}").ToString();
    }

    static async Task<string?> StartId(string program, params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
            var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(0, process.ExitCode);
            return output;
        }
        catch (Win32Exception)
        {
            return null;
        }
    }
}
