/* stead-crop-kind.c - crops that the program knows, and what is usual for them. */
#include "config.h"

#include "core/stead-crop-kind.h"
#include "core/stead-husbandry.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* In the order of the table. */
static const char * const names[] = {
  N_("tomatoes"), N_("peppers"), N_("cucumbers"), N_("lettuce"), N_("basil"), N_("beans"),
};

static SteadCropDefaults crops[] = {
  /* Base, upper limit, need and yield are filled in from their sources. */
  { "tomato", STEAD_CROP_KIND_FRUITING, STEAD_HARVEST_PLATEAU, 0, 0, 0, 0, 12, 0, TRUE },
  { "pepper", STEAD_CROP_KIND_FRUITING, STEAD_HARVEST_PLATEAU, 10, 30, 800, 1.5, 10, 3, FALSE },
  { "cucumber", STEAD_CROP_KIND_FRUITING, STEAD_HARVEST_PLATEAU, 12, 32, 450, 4, 8, 2, FALSE },
  { "lettuce", STEAD_CROP_KIND_LEAFY, STEAD_HARVEST_EVEN, 4, 24, 550, 0.25, 2, 20, FALSE },
  { "basil", STEAD_CROP_KIND_LEAFY, STEAD_HARVEST_EVEN, 10, 30, 350, 0.3, 6, 20, FALSE },
  { "bean", STEAD_CROP_KIND_FRUITING, STEAD_HARVEST_BELL, 10, 30, 600, 0.25, 4, 12, FALSE },
};

G_STATIC_ASSERT (G_N_ELEMENTS (names) == G_N_ELEMENTS (crops));

/* A plant's sourced yield is that of a year with two crops in a greenhouse: one gives half. */
static void
fill_tomato (SteadCropDefaults *tomato)
{
  SteadDegreeDayRule rule;

  stead_crop_tomato_rule (&rule);
  tomato->base_c = rule.base_c;
  tomato->upper_c = rule.upper_c;
  tomato->ripe_need = stead_husbandry_default (STEAD_DEFAULT_TOMATO_RIPE);
  tomato->yield_kg = stead_husbandry_default (STEAD_DEFAULT_TOMATO_YIELD) / 2;
  tomato->density_m2 = stead_husbandry_default (STEAD_DEFAULT_TOMATO_PLANTS);
}

const SteadCropDefaults *
stead_crop_known (gsize *n_crops)
{
  static gsize filled = 0;

  if (g_once_init_enter (&filled))
    {
      fill_tomato (&crops[0]);
      g_once_init_leave (&filled, 1);
    }
  if (n_crops != NULL)
    *n_crops = G_N_ELEMENTS (crops);
  return crops;
}

const SteadCropDefaults *
stead_crop_defaults (const char *id)
{
  const SteadCropDefaults *known = stead_crop_known (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (crops); i++)
    if (id != NULL && strcmp (id, known[i].id) == 0)
      return &known[i];
  return NULL;
}

const char *
stead_crop_word (const char *id)
{
  const SteadCropDefaults *crop = stead_crop_defaults (id);

  return crop != NULL ? _(names[crop - crops]) : id;
}
