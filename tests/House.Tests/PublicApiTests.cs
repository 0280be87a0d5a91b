using System.Text;
using Google.Protobuf.Reflection;
using ScaleLink.Api.V1;
using Shared;

namespace House.Tests;

/// <summary>Pins the wire contract of scalelink.v1: names, numbers, types. A change shows here before it breaks a reader.</summary>
public class PublicApiTests
{
    private static readonly FileDescriptor[] Files =
    [
        CommonReflection.Descriptor, CarsReflection.Descriptor, FeedReflection.Descriptor, PadsReflection.Descriptor, PatchReflection.Descriptor, InclinometerZerosReflection.Descriptor, WorkSessionsReflection.Descriptor, WorkSessionReflection.Descriptor, WorkSessionHistoryReflection.Descriptor,
        MassesReflection.Descriptor, CalibrationSummaryReflection.Descriptor, ProcedureResultsReflection.Descriptor, ProcedurePlansReflection.Descriptor, CalibrationsReflection.Descriptor, CalibrationProceduresReflection.Descriptor, PadInterchangesReflection.Descriptor, RecorderReflection.Descriptor,
        SetupReflection.Descriptor, SetupSheetsReflection.Descriptor, SiteCheckReflection.Descriptor,
    ];

    [Fact]
    public void The_wire_contract_is_the_approved_one() =>
        Approved.Matches(string.Join("\n", Files.Select(Describe)), "tests", "House.Tests", "scalelink.v1.approved.txt");

    [Fact]
    public void Every_proto_file_is_pinned()
    {
        var files = Directory.EnumerateFiles(RepositoryRoot.File("proto", "scalelink", "v1"), "*.proto").Select(f => $"scalelink/v1/{Path.GetFileName(f)}");
        Assert.Equal(files.Order(), Files.Select(f => f.Name).Order());
    }

    private static string Describe(FileDescriptor file)
    {
        var text = new StringBuilder().AppendLine($"file {file.Name}");
        foreach (var service in file.Services)
            foreach (var method in service.Methods)
                text.AppendLine($"rpc {service.FullName}.{method.Name}({method.InputType.FullName}) returns ({(method.IsServerStreaming ? "stream " : "")}{method.OutputType.FullName})");
        foreach (var choice in file.EnumTypes)
            foreach (var value in choice.Values)
                text.AppendLine($"enum {choice.FullName} {value.Number} {value.Name}");
        foreach (var message in file.MessageTypes)
            foreach (var field in message.Fields.InFieldNumberOrder())
                text.AppendLine($"field {message.FullName} {field.FieldNumber} {(field.IsRepeated ? "repeated " : field.HasPresence ? "optional " : "")}{TypeOf(field)} {field.Name}");
        return text.ToString();
    }

    private static string TypeOf(FieldDescriptor field) => field.FieldType switch
    {
        FieldType.Message => field.MessageType.FullName,
        FieldType.Enum => field.EnumType.FullName,
        var plain => plain.ToString().ToLowerInvariant(),
    };
}
