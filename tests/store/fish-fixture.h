/* fish-fixture.h - a farm with two tanks and a group of fish. */
#pragma once

#include "repo-fixture.h"
#include "store/stead-fish-repo.h"

G_BEGIN_DECLS

typedef struct
{
  Farm   *farm;
  gint64  house;     /* a place that is no tank */
  gint64  tank;      /* "Tank A" */
  gint64  second;    /* "Tank B" */
  gint64  pellets;   /* "Fish pellets", kg */
  gint64  cats;      /* "Cats A": 100 channel catfish of 45 g, put into Tank A 100 days ago */
} Pond;

Pond *pond_new  (void);
void  pond_free (Pond *pond);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Pond, pond_free)

/* 100 channel catfish of 45 g, put in @days ago; returns the id. */
gint64 pond_group    (Pond *pond, const char *name, gint64 tank, int days);
/* Feed in kg, or NAN. */
gint64 pond_entry    (Pond *pond, gint64 fish, SteadDay day, double feed_kg, int deaths);
void   pond_entry_at (Pond *pond, gint64 fish, SteadDay day, double water_c);
gint64 pond_weigh    (Pond *pond, gint64 fish, SteadDay day, int n, double total_kg);

G_END_DECLS
