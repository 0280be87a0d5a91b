using Xunit.Sdk;
using Xunit.v3;

namespace Client.Tests.Bay;

/// <summary>Runs the tests of a class in the order of their names, where each goes on from what the one before left.</summary>
public sealed class ByName : ITestCaseOrderer
{
    public IReadOnlyCollection<TTestCase> OrderTestCases<TTestCase>(IReadOnlyCollection<TTestCase> testCases)
        where TTestCase : notnull, ITestCase => [.. testCases.OrderBy(t => t.TestMethodName, StringComparer.Ordinal)];
}
