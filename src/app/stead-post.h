/* stead-post.h - the places of the window, and which of them shows what. */
#pragma once

#include "app/stead-page.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name;         /* of its post, its page and its setting */
  const char *label;        /* the verb on the post; context "place" */
  GType     (*page_type) (void);
} SteadPost;

#define STEAD_N_POSTS 9

/* Left to right. */
extern const SteadPost stead_posts[STEAD_N_POSTS];

/* @name: (nullable).  Returns: (nullable): %NULL if there is none of that name */
const SteadPost *stead_post_find      (const char *name);
/* @target: a SteadTarget.  Returns: (nullable): the place that shows it */
const SteadPost *stead_post_of_target (int target);

G_END_DECLS
