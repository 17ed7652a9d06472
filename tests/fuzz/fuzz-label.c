/* fuzz-label.c - whatever stands on a label, it lies on it in letters that are high enough, or does not fit.
 *
 * Built with -DSTEAD_LIBFUZZER and clang -fsanitize=fuzzer this is a target for
 * the fuzzer; built plainly it runs over the files named on its command line and
 * over mixtures of their lines, which the ordinary tests do with the seeds.
 *
 * The first byte chooses the blank and the rules; each line is one part of the label.
 */
#include "core/stead-label-sheet.h"
#include "draw/draw-probe.h"
#include "draw/stead-pack-label.h"

#include <stdio.h>
#include <string.h>

#define PAD 5.0   /* white margin of a label, as the layout has it */

int LLVMFuzzerTestOneInput (const guint8 *data,
                            size_t        size);

/* Letters of the net quantity by main panel: 21 CFR 101.7(i); of the rest 101.2(c); and none. */
static const SteadPackLabelRules rules[] = {
  { .net = 4.5, .others = 4.5 },
  { .net = 9, .others = 4.5 },
  { .net = 13.5, .others = 4.5 },
  { .net = 18, .others = 4.5 },
};

static gboolean
overlap (const SteadBox *a,
         const SteadBox *b)
{
  return a->width > 0 && b->width > 0 && a->x + a->width > b->x + 0.01 && b->x + b->width > a->x + 0.01 &&
         a->y + a->height > b->y + 0.01 && b->y + b->height > a->y + 0.01;
}

static void
check_layout (const SteadPackLabelWords  *words,
              const SteadPackLabelRules  *rule,
              const SteadPackLabelLayout *layout)
{
  SteadBox boxes[STEAD_N_TAG_PARTS + 1];

  memcpy (boxes, layout->box, sizeof layout->box);
  boxes[STEAD_N_TAG_PARTS] = layout->code;
  for (int i = 0; i < STEAD_N_TAG_PARTS; i++)
    {
      g_assert_true ((words->text[i] != NULL) == (boxes[i].width > 0));
      if (words->text[i] != NULL)
        g_assert_cmpfloat (layout->letter[i], >=, (i == STEAD_TAG_NET ? rule->net : rule->others) - 1e-9);
    }
  for (int i = 0; i <= STEAD_N_TAG_PARTS; i++)
    {
      if (boxes[i].width <= 0)
        continue;
      g_assert_cmpfloat (boxes[i].x, >=, PAD - 0.1);
      g_assert_cmpfloat (boxes[i].y, >=, PAD - 0.1);
      g_assert_cmpfloat (boxes[i].x + boxes[i].width, <=, layout->width - PAD + 0.1);
      g_assert_cmpfloat (boxes[i].y + boxes[i].height, <=, layout->height - PAD + 0.1);
      for (int j = 0; j < i; j++)
        g_assert_false (overlap (&boxes[i], &boxes[j]));
    }
}

static void
try_label (const SteadPackLabelWords *words,
           const SteadPackLabelRules *rule,
           const SteadLabelSheet     *sheet)
{
  SteadPackLabelLayout layout;
  cairo_t *cr = probe_record ();

  if (stead_pack_label_layout (cr, words, rule, sheet->width, sheet->height, &layout))
    {
      check_layout (words, rule, &layout);
      stead_pack_label_paint (cr, words, &layout);
    }
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
}

/* Bytes of whole characters, 27 of them at most. */
static gsize
head_length (const char *text)
{
  glong n = MIN (27, g_utf8_strlen (text, -1));

  return (gsize) (g_utf8_offset_to_pointer (text, n) - text);
}

/* The store gives out UTF-8 alone. */
int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autofree char *text = NULL;
  g_auto(GStrv) lines = NULL;
  SteadPackLabelWords words = { .text = { NULL } };
  const SteadLabelSheet *sheets;
  gsize n_sheets;

  if (size < 2)
    return 0;
  text = g_utf8_make_valid ((const char *) data + 1, (gssize) (strnlen ((const char *) data + 1, size - 1)));
  lines = g_strsplit (text, "\n", STEAD_N_TAG_PARTS);
  for (int i = 0; lines[i] != NULL; i++)
    words.text[i] = *lines[i] != '\0' ? lines[i] : NULL;
  if (words.text[STEAD_TAG_SAFE] != NULL)
    words.safe_bold = head_length (words.text[STEAD_TAG_SAFE]);
  sheets = stead_label_sheet_list (&n_sheets);
  try_label (&words, &rules[data[0] % G_N_ELEMENTS (rules)], &sheets[data[0] / G_N_ELEMENTS (rules) % n_sheets]);
  return 0;
}

#ifndef STEAD_LIBFUZZER
/* The file as a label, then labels whose parts are cut and taken from anywhere in it. */
static void
try_file (const char *contents,
          GRand      *rand)
{
  g_auto(GStrv) lines = g_strsplit (contents + 1, "\n", -1);
  gsize n = g_strv_length (lines);

  LLVMFuzzerTestOneInput ((const guint8 *) contents, strlen (contents));
  for (int round = 0; round < 60; round++)
    {
      g_autoptr(GString) label = g_string_new (NULL);

      g_string_append_c (label, (char) g_rand_int_range (rand, 1, 256));
      for (int part = 0; part < STEAD_N_TAG_PARTS; part++)
        {
          const char *line = lines[g_rand_int_range (rand, 0, (gint32) n)];

          if (part > 0)
            g_string_append_c (label, '\n');
          if (g_rand_int_range (rand, 0, 4) > 0)
            g_string_append_len (label, line, g_rand_int_range (rand, 0, (gint32) strlen (line) + 1));
        }
      if (g_rand_boolean (rand))
        label->str[g_rand_int_range (rand, 0, (gint32) label->len)] = (char) g_rand_int_range (rand, 1, 256);
      LLVMFuzzerTestOneInput ((const guint8 *) label->str, label->len);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr(GRand) rand = g_rand_new_with_seed (20260303);

  printf ("1..%d\n", argc - 1);
  for (int i = 1; i < argc; i++)
    {
      g_autofree char *contents = NULL;
      gsize length;

      if (!g_file_get_contents (argv[i], &contents, &length, NULL) || length < 20)
        {
          printf ("Bail out! %s cannot be read\n", argv[i]);
          return 1;
        }
      try_file (contents, rand);
      printf ("ok %d %s\n", i, argv[i]);
    }
  return argc < 2;
}
#endif
