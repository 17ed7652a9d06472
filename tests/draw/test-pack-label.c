/* test-pack-label.c - the label of a pack: nothing overlaps, nothing is too small, its code can be read. */
#include <string.h>
#include <zbar.h>

#include "draw-probe.h"
#include "draw/stead-pack-label.h"

/* 21 CFR 101.7(i)(2): 1/8 inch for a main panel of 5 to 25 square inches; 1/16 for the rest (101.2(c)). */
static const SteadPackLabelRules rules = { .net = 9, .others = 4.5 };

static const SteadPackLabelWords jar = {
  .text = {
    [STEAD_TAG_NAME] = "Roasted tomato sauce",
    [STEAD_TAG_INGREDIENTS] = "Ingredients: tomatoes, onions, olive oil, garlic, bottled lemon juice, salt, basil.",
    [STEAD_TAG_CONTAINS] = "Contains: milk.",
    [STEAD_TAG_KEEP] = "Keep refrigerated.",
    [STEAD_TAG_DATES] = "Made Mar 3, 2026. Best by Mar 10, 2026.",
    [STEAD_TAG_FARM] = "Ember Lake School Farm, 12 Lake Road, Ember Lake",
    [STEAD_TAG_NET] = "Net Wt. 16 oz (1 lb)",
    [STEAD_TAG_LOT] = "K26062-1",
  },
};

static const SteadPackLabelWords shelf = {
  .text = { [STEAD_TAG_NAME] = "Eggs", [STEAD_TAG_PRICE] = "$4.50", [STEAD_TAG_NET] = "12 eggs" },
};

static gboolean
overlap (const SteadBox *a,
         const SteadBox *b)
{
  return a->width > 0 && b->width > 0 && a->x + a->width > b->x + 0.01 && b->x + b->width > a->x + 0.01 &&
         a->y + a->height > b->y + 0.01 && b->y + b->height > a->y + 0.01;
}

static void
assert_sound (const SteadPackLabelWords  *words,
              const SteadPackLabelLayout *layout)
{
  const SteadBox *boxes[STEAD_N_TAG_PARTS + 1];

  for (int i = 0; i < STEAD_N_TAG_PARTS; i++)
    {
      boxes[i] = &layout->box[i];
      if (words->text[i] == NULL)
        continue;
      g_assert_cmpfloat (layout->letter[i], >=, (i == STEAD_TAG_NET ? rules.net : rules.others) - 1e-9);
      g_assert_cmpfloat (boxes[i]->y, >=, 4.9);
      g_assert_cmpfloat (boxes[i]->y + boxes[i]->height, <=, layout->height - 4.9);
    }
  boxes[STEAD_N_TAG_PARTS] = &layout->code;
  for (int i = 0; i <= STEAD_N_TAG_PARTS; i++)
    for (int j = 0; j < i; j++)
      if (overlap (boxes[i], boxes[j]))
        g_error ("part %d lies over part %d", i, j);
}

static void
test_jar (void)
{
  cairo_t *cr = probe_record ();
  SteadPackLabelLayout layout;

  g_assert_true (stead_pack_label_layout (cr, &jar, &rules, 288, 240, &layout));
  assert_sound (&jar, &layout);
  /* 21 CFR 101.7(f): the net quantity stands in the lowest 30 percent. */
  g_assert_cmpfloat (layout.box[STEAD_TAG_NET].y, >=, 0.7 * 240);
  stead_pack_label_paint (cr, &jar, &layout);
  probe_assert_inside (cr, 288, 240);
  cairo_destroy (cr);
}

/* A letter of the painted size really is that high: measured in its pixels, not by Pango. */
static void
test_letters_are_as_high_as_said (void)
{
  const SteadPackLabelWords o = { .text = { [STEAD_TAG_DATES] = "o" } };
  cairo_t *cr = probe_record ();
  SteadPackLabelLayout layout;
  double x, y, width, height;

  g_assert_true (stead_pack_label_layout (cr, &o, &rules, 288, 144, &layout));
  stead_pack_label_paint (cr, &o, &layout);
  cairo_recording_surface_ink_extents (cairo_get_target (cr), &x, &y, &width, &height);
  g_assert_cmpfloat_with_epsilon (height, layout.letter[STEAD_TAG_DATES], 1.01);
  g_assert_cmpfloat (height, >=, rules.others);
  cairo_destroy (cr);
}

/* What would need smaller letters than the rules allow does not fit. */
static void
test_too_small_a_label (void)
{
  cairo_t *cr = probe_record ();
  SteadPackLabelLayout layout;

  g_assert_false (stead_pack_label_layout (cr, &jar, &rules, 189, 72, &layout));
  g_assert_false (layout.fits);
  /* One word wider than the label cannot be broken into it. */
  g_assert_false (stead_pack_label_layout (cr, &(SteadPackLabelWords) { .text = { "Incomprehensibilities" } }, &rules,
                                           60, 200, &layout));
  cairo_destroy (cr);
}

static void
test_larger_labels_have_larger_type (void)
{
  cairo_t *cr = probe_record ();
  SteadPackLabelLayout small, large;

  g_assert_true (stead_pack_label_layout (cr, &shelf, &rules, 189, 72, &small));
  g_assert_true (stead_pack_label_layout (cr, &shelf, &rules, 288, 144, &large));
  assert_sound (&shelf, &small);
  assert_sound (&shelf, &large);
  g_assert_cmpfloat (large.size[STEAD_TAG_PRICE], >, small.size[STEAD_TAG_PRICE]);
  g_assert_cmpfloat (large.code.width, ==, 0);
  cairo_destroy (cr);
}

/* Another library reads the code off the painted label. */
static void
test_code_can_be_read (void)
{
  const int scale = 4, width = 288, height = 240;
  cairo_t *cr = probe_image (STEAD_SCHEME_PRINT, width * scale, height * scale);
  cairo_surface_t *surface = cairo_get_target (cr);
  g_autofree guchar *gray = g_malloc ((gsize) width * scale * height * scale);
  SteadPackLabelLayout layout;
  zbar_image_scanner_t *scanner = zbar_image_scanner_create ();
  zbar_image_t *image = zbar_image_create ();
  const guchar *data;
  int stride;

  g_assert_true (stead_pack_label_layout (cr, &jar, &rules, width, height, &layout));
  cairo_scale (cr, scale, scale);
  stead_pack_label_paint (cr, &jar, &layout);
  cairo_surface_flush (surface);
  data = cairo_image_surface_get_data (surface);
  stride = cairo_image_surface_get_stride (surface);
  for (int y = 0; y < height * scale; y++)
    for (int x = 0; x < width * scale; x++)
      gray[y * width * scale + x] = data[y * stride + 4 * x + 1];
  zbar_image_set_format (image, zbar_fourcc ('Y', '8', '0', '0'));
  zbar_image_set_size (image, width * scale, height * scale);
  zbar_image_set_data (image, gray, (gulong) (width * scale * height * scale), NULL);
  g_assert_cmpint (zbar_scan_image (scanner, image), ==, 1);
  g_assert_cmpstr (zbar_symbol_get_data (zbar_image_first_symbol (image)), ==, "K26062-1");
  zbar_image_destroy (image);
  zbar_image_scanner_destroy (scanner);
  cairo_destroy (cr);
}

static double
ink_of_safe (const SteadPackLabelWords *words)
{
  cairo_t *cr = probe_record ();
  SteadPackLabelLayout layout;
  double sum = 0;

  g_assert_true (stead_pack_label_layout (cr, words, &rules, 288, 144, &layout));
  assert_sound (words, &layout);
  cairo_destroy (cr);
  cr = probe_image (STEAD_SCHEME_PRINT, 288, 144);
  stead_pack_label_paint (cr, words, &layout);
  for (int y = 0; y < 144; y++)
    for (int x = 0; x < 288; x++)
      sum += 255 - (probe_pixel (cr, x, y) & 0xff);
  cairo_destroy (cr);
  return sum;
}

/* The words that are bold by law take more ink than plain ones. */
static void
test_safe_handling (void)
{
  SteadPackLabelWords words = { .text = { [STEAD_TAG_SAFE] = "SAFE HANDLING INSTRUCTIONS: keep eggs cold." } };
  double plain = ink_of_safe (&words), bold;

  words.safe_bold = strlen ("SAFE HANDLING INSTRUCTIONS");
  bold = ink_of_safe (&words);
  g_assert_cmpfloat (bold, >, 1.05 * plain);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/pack-label/jar", test_jar);
  g_test_add_func ("/draw/pack-label/letters-are-as-high-as-said", test_letters_are_as_high_as_said);
  g_test_add_func ("/draw/pack-label/too-small-a-label", test_too_small_a_label);
  g_test_add_func ("/draw/pack-label/larger-labels-have-larger-type", test_larger_labels_have_larger_type);
  g_test_add_func ("/draw/pack-label/code-can-be-read", test_code_can_be_read);
  g_test_add_func ("/draw/pack-label/safe-handling", test_safe_handling);
  return g_test_run ();
}
