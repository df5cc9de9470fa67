"""The words of a cover: parted into lines, sized, and set on spine and front."""
