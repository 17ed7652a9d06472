/* test-palette.c - every pair of colours that is used can be told apart.
 *
 * The bar: WCAG 2.2 (W3C), success criteria 1.4.3 (text 4.5:1) and 1.4.11
 * (graphics 3:1); the ratio as its glossary defines it, from memory.
 */
#include "draw-probe.h"

#define TEXT 4.5
#define MARK 3.0

typedef struct
{
  SteadRole over, under;
  double    least;
} Pair;

static const Pair pairs[] = {
  { STEAD_ROLE_INK, STEAD_ROLE_PAGE, TEXT },    { STEAD_ROLE_INK, STEAD_ROLE_CARD, TEXT },
  { STEAD_ROLE_INK, STEAD_ROLE_SHELL, TEXT },   { STEAD_ROLE_SOFT, STEAD_ROLE_PAGE, TEXT },
  { STEAD_ROLE_SOFT, STEAD_ROLE_CARD, TEXT },   { STEAD_ROLE_WATER, STEAD_ROLE_PAGE, TEXT },
  { STEAD_ROLE_WATER, STEAD_ROLE_CARD, TEXT },  { STEAD_ROLE_TOMATO, STEAD_ROLE_PAGE, TEXT },
  { STEAD_ROLE_TOMATO, STEAD_ROLE_CARD, TEXT }, { STEAD_ROLE_CARD, STEAD_ROLE_INK, TEXT },
  { STEAD_ROLE_FISH, STEAD_ROLE_CARD, MARK },   { STEAD_ROLE_FISH, STEAD_ROLE_PAGE, MARK },
  { STEAD_ROLE_CROP, STEAD_ROLE_CARD, MARK },   { STEAD_ROLE_CROP, STEAD_ROLE_PAGE, MARK },
  { STEAD_ROLE_SAUCE, STEAD_ROLE_CARD, MARK },  { STEAD_ROLE_SAUCE, STEAD_ROLE_PAGE, MARK },
  /* Egg and shell are told by the ink outline that they always carry: it must show on both sides. */
  { STEAD_ROLE_INK, STEAD_ROLE_EGG, -MARK },    { STEAD_ROLE_INK, STEAD_ROLE_SHELL, MARK },
};

static void
test_pairs (void)
{
  for (int scheme = 0; scheme < STEAD_N_SCHEMES; scheme++)
    for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
      {
        double ratio = stead_palette_contrast (stead_palette_rgb ((SteadScheme) scheme, pairs[i].over),
                                               stead_palette_rgb ((SteadScheme) scheme, pairs[i].under));

        /* On dark the egg itself stands out and its outline need not. */
        if (pairs[i].least < 0 && scheme == STEAD_SCHEME_DARK)
          ratio = stead_palette_contrast (stead_palette_rgb (STEAD_SCHEME_DARK, STEAD_ROLE_EGG),
                                          stead_palette_rgb (STEAD_SCHEME_DARK, STEAD_ROLE_CARD));
        g_test_message ("scheme %d: role %d on %d: %.2f", scheme, pairs[i].over, pairs[i].under, ratio);
        g_assert_cmpfloat (ratio, >=, fabs (pairs[i].least));
      }
}

/* Black on white is 21:1, equal colours 1:1, and #767676 on white is the lightest
 * grey that passes for text: 4.54:1 (a value found in many texts on the criterion; from memory). */
static void
test_contrast (void)
{
  g_assert_cmpfloat_with_epsilon (stead_palette_contrast (0x000000, 0xffffff), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_palette_contrast (0x123456, 0x123456), 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (stead_palette_contrast (0x767676, 0xffffff), 4.54, 0.005);
  g_assert_cmpfloat_with_epsilon (stead_palette_contrast (0xffffff, 0x767676), 4.54, 0.005);
}

/* Why egg must be outlined: alone it does not reach the bar on white. */
static void
test_egg_needs_its_outline (void)
{
  g_assert_cmpfloat (stead_palette_contrast (stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_EGG),
                                             stead_palette_rgb (STEAD_SCHEME_LIGHT, STEAD_ROLE_CARD)), <, MARK);
}

/* The colour that a style sheet defines for @name; -1: none. */
static gint64
css_color (const char *css,
           const char *name)
{
  g_autofree char *start = g_strdup_printf ("@define-color %s #", name);
  const char *at = strstr (css, start);

  return at == NULL ? -1 : g_ascii_strtoll (at + strlen (start), NULL, 16);
}

/* The window and the drawings have one set of colours. */
static void
test_same_as_the_style_sheets (void)
{
  static const char * const names[STEAD_N_ROLES] = {
    "page", "card", "ink", "soft", "rule", "shell", "water", "tomato", "egg", "fish", "crop", "sauce",
  };
  static const struct { const char *file; SteadScheme scheme; } sheets[] = {
    { "steading.css", STEAD_SCHEME_LIGHT }, { "steading-dark.css", STEAD_SCHEME_DARK },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (sheets); i++)
    {
      g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "ui", sheets[i].file, NULL);
      g_autoptr(GError) error = NULL;
      g_autofree char *css = NULL;

      g_file_get_contents (path, &css, NULL, &error);
      g_assert_no_error (error);
      for (int role = 0; role < STEAD_N_ROLES; role++)
        {
          g_test_message ("%s: %s", sheets[i].file, names[role]);
          g_assert_cmpint (css_color (css, names[role]), ==, stead_palette_rgb (sheets[i].scheme, (SteadRole) role));
        }
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/palette/pairs", test_pairs);
  g_test_add_func ("/draw/palette/contrast", test_contrast);
  g_test_add_func ("/draw/palette/egg-needs-its-outline", test_egg_needs_its_outline);
  g_test_add_func ("/draw/palette/same-as-the-style-sheets", test_same_as_the_style_sheets);
  return g_test_run ();
}
