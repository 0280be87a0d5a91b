using Xunit.Sdk;
using Xunit.v3;

namespace Client.Tests.Bay;

/// <summary>Runs the tests of a class in the order of their names, where each goes on from what the one before left.</summary>
public sealed class ByName : ITestMethodOrderer
{
    public IReadOnlyCollection<TTestMethod?> OrderTestMethods<TTestMethod>(IReadOnlyCollection<TTestMethod?> testMethods)
        where TTestMethod : notnull, ITestMethod => [.. testMethods.OrderBy(t => t?.MethodName, StringComparer.Ordinal)];
}
