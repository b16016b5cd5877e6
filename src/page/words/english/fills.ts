/** The figures of the fills. */

export const fillsWords = {
  place: {
    swag: ({ fill }: { readonly fill: string }) => `${fill} inside the swags`,
    background: ({ fill }: { readonly fill: string }) => `${fill} round the swags`,
    corner: ({ fill }: { readonly fill: string }) => `${fill} in the corners`,
    square: ({ fill }: { readonly fill: string }) => `${fill} in the corner squares`,
    between: ({ fill }: { readonly fill: string }) => `${fill} between the rows`,
    channels: ({ fill }: { readonly fill: string }) => `${fill} in the channels`,
  },
  spacing: 'Spacing',
  spacingName: 'spacing of a fill',
  angle: 'Angle',
  angleWrong: 'Write an angle in degrees, such as 45.',
  seed: 'Seed',
  seedWrong: ({ most }: { readonly most: number }) =>
    `Write a whole number from 0 to ${most}: each draws another.`,
};
