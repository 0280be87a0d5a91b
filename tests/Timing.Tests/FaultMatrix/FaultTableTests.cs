using Shared;

namespace Timing.Tests.FaultMatrix;

/// <summary>What people read of faults is what is tried.</summary>
public class FaultTableTests
{
    [Fact]
    public void The_document_has_every_fault_with_its_code_for_each_protocol_or_why_there_is_none() =>
        Assert.Contains(FaultList.Table(), File.ReadAllText(RepositoryRoot.File("docs", "faults.md")).ReplaceLineEndings("\n"));
}
