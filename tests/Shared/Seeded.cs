using CsCheck;

namespace Shared;

/// <summary>Properties on the same cases in every run.</summary>
internal static class Seeded
{
    /// <summary>Tries the property on so many generated cases; a case that fails is handed to CsCheck to be made smaller.</summary>
    public static void Check<T>(Gen<T> cases, int count, Action<T> property)
    {
        var generator = new PCG(1, 2026);
        for (var index = 0; index < count; index++)
        {
            var seed = generator.ToString();
            var value = cases.Generate(generator, null, out _);
            try
            {
                property(value);
            }
            catch (Exception)
            {
                cases.Sample(property, seed: seed, iter: 1000);
                throw;
            }
        }
    }
}
